/** A seeded source of chance: the same seed gives the same numbers everywhere. */
export interface Random {
  /** 32 random bits as a whole number from 0 to 2³² − 1. */
  readonly bits: () => number;
  /** From 0 (included) to 1 (left out), in steps of 2⁻³². */
  readonly uniform: () => number;
  /** A whole number from 0 to n − 1; for n far below 2³² the unevenness (n / 2³²) is out of sight. */
  readonly below: (n: number) => number;
}

/**
 * xoshiro128** (Blackman, Vigna 2018, public domain algorithm), its state filled from the seed by splitmix32.
 * @throws RangeError when the seed is not a whole number
 * @example seededRandom(7).below(10) === seededRandom(7).below(10) // => true
 */
export function seededRandom(seed: number): Random {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seededRandom requires a whole number as seed, received ${seed}`);
  const split = splitMix32(seed);
  let a = split();
  let b = split();
  let c = split();
  let d = split();
  const bits = () => {
    const mixed = Math.imul(b, 5);
    const result = Math.imul((mixed << 7) | (mixed >>> 25), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = (d << 11) | (d >>> 21);
    return result;
  };
  const uniform = () => bits() / 4294967296;
  return { bits, uniform, below: (n) => Math.floor(uniform() * n) };
}

function splitMix32(seed: number): () => number {
  // Seeds beyond 32 bits keep their high part, so that 1 and 2³² + 1 differ.
  let state = (seed ^ Math.imul(Math.floor(seed / 4294967296), 0x85ebca6b)) | 0;
  return () => {
    state = (state + 0x9e3779b9) | 0;
    let z = state ^ (state >>> 16);
    z = Math.imul(z, 0x21f0aaad);
    z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
    return z ^ (z >>> 15);
  };
}
