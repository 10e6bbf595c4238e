/** Seeded chance: the same seed gives the same draws on every machine, so the files of the demo can be made again byte for byte. */
export type Chance = {
  /** In [0, 1). */
  readonly uniform: () => number;
  readonly between: (low: number, high: number) => number;
  /** A whole number, both ends included. */
  readonly whole: (low: number, high: number) => number;
  readonly happens: (probability: number) => boolean;
  /** Mean 0, standard deviation 1. */
  readonly normal: () => number;
  /** Mean 0, standard deviation 1, a long tail to the right: healing is late more often than it is early. */
  readonly skewed: () => number;
  readonly pick: <T>(list: readonly T[]) => T;
  readonly weighted: <T>(choices: readonly (readonly [choice: T, weight: number])[]) => T;
  /** One of the names, by their weights. */
  readonly among: <K extends string>(weights: Readonly<Record<K, number>>) => K;
  readonly shuffled: <T>(list: readonly T[]) => T[];
};

/** A stream of its own for each name, so that a change in one part of the scenario leaves every other part as it was. */
export function chanceOf(...name: readonly (string | number)[]): Chance {
  const uniform = uniformsOf(hashOf(name.join("/")));
  const between = (low: number, high: number) => low + (high - low) * uniform();
  const whole = (low: number, high: number) => low + Math.floor(uniform() * (high - low + 1));
  const pick = <T>(list: readonly T[]): T => {
    const found = list[whole(0, list.length - 1)];
    if (found === undefined) throw new RangeError(`pick requires a list with values, received ${list.length}`);
    return found;
  };
  return {
    uniform,
    between,
    whole,
    happens: (probability) => uniform() < probability,
    normal: () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform()),
    // a gamma variate of shape 4, standardised
    skewed: () => (-Math.log((1 - uniform()) * (1 - uniform()) * (1 - uniform()) * (1 - uniform())) - 4) / 2,
    pick,
    weighted: (choices) => weightedBy(uniform(), choices),
    among: <K extends string>(weights: Readonly<Record<K, number>>) => weightedBy(uniform(), Object.entries(weights) as [K, number][]),
    shuffled: (list) =>
      list
        .map((value) => [uniform(), value] as const)
        .sort((a, b) => a[0] - b[0])
        .map(([, value]) => value),
  };
}

function weightedBy<T>(uniform: number, choices: readonly (readonly [T, number])[]): T {
  let left = uniform * choices.reduce((sum, [, weight]) => sum + weight, 0);
  for (const [choice, weight] of choices) {
    left -= weight;
    if (left < 0) return choice;
  }
  throw new RangeError(`weighted requires positive weights, received ${choices.length} choices`);
}

/** FNV-1a, 32 bits. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash >>> 0;
}

/** The small generator by Chris Doty-Humphrey known as sfc32, run in from a 32-bit seed. */
function uniformsOf(seed: number): () => number {
  let [a, b, c, counter] = [0, seed, seed ^ 0x9e3779b9, 1];
  const next = () => {
    const sum = (((a + b) | 0) + counter) | 0;
    counter = (counter + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + sum) | 0;
    return (sum >>> 0) / 4294967296;
  };
  for (let i = 0; i < 15; i++) next();
  return next;
}
