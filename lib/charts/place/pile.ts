/** Slack of a touch: discs whose edges meet do not overlap. */
const touch = 1e-6;

/**
 * Piles discs on a line without overlap and without chance: each keeps its x, and takes the lowest free height among those laid before.
 * They are laid from the middle of ever smaller parts of the row: laid from left to right they would lean into towers that say nothing.
 * Returns the height of each centre above the line, px, in the order given.
 * @example pile([0, 0, 10], 2) // => [2, 6, 2]
 */
export function pile(xs: readonly number[], radius: number): number[] {
  const heights = new Array<number>(xs.length).fill(radius);
  const laid = new Map<number, number[]>();
  const cellOf = (x: number) => Math.floor(x / (2 * radius));
  for (const index of scattered(xs)) {
    const x = xs[index] ?? 0;
    const cell = cellOf(x);
    const near = [cell - 1, cell, cell + 1].flatMap((one) => laid.get(one) ?? []);
    const taken = near.map((other) => gapAround(heights[other] ?? radius, x - (xs[other] ?? 0), radius));
    heights[index] = lowestFree(taken, radius);
    laid.set(cell, [...(laid.get(cell) ?? []), index]);
  }
  return heights;
}

/** Indices by value, then by the bits of their rank read backwards: 0, ½, ¼, ¾, ⅛ … of the way along. */
function scattered(xs: readonly number[]): number[] {
  const sorted = xs.map((_, index) => index).sort((a, b) => (xs[a] ?? 0) - (xs[b] ?? 0) || a - b);
  const bits = Math.max(1, Math.ceil(Math.log2(Math.max(2, sorted.length))));
  const turned = Array.from({ length: 2 ** bits }, (_, rank) => backwards(rank, bits));
  return turned.flatMap((rank) => sorted[rank] ?? []);
}

function backwards(number: number, bits: number): number {
  let out = 0;
  for (let bit = 0; bit < bits; bit++) if (number & (1 << bit)) out |= 1 << (bits - 1 - bit);
  return out;
}

type Span = readonly [from: number, to: number];

/** The heights at which a disc `dx` away would overlap the one at `height`; none when it is far enough. */
function gapAround(height: number, dx: number, radius: number): Span {
  const reach = Math.sqrt(Math.max(0, 4 * radius * radius - dx * dx));
  return [height - reach, height + reach];
}

function lowestFree(taken: Span[], radius: number): number {
  let height = radius;
  for (const [from, to] of taken.sort((a, b) => a[0] - b[0])) {
    if (from >= height - touch) break;
    if (to > height) height = to;
  }
  return height;
}
