/** Slack of a touch: discs whose edges meet do not overlap. */
const touch = 1e-6;

/** With more discs nobody sees one by one whether they touch, and looking for each one's place takes too long. */
const mostPiled = 1500;

/** One on the other in columns as wide as a disc. */
function stacked(xs: readonly number[], radius: number): number[] {
  const columns = new Map<number, number>();
  return xs.map((x) => {
    const column = Math.floor(x / (2 * radius));
    const below = columns.get(column) ?? 0;
    columns.set(column, below + 1);
    return radius + 2 * radius * below;
  });
}

/**
 * Piles discs on a line without overlap and without chance: each keeps its x, and takes the lowest free height among those laid before.
 * They are laid from the middle of ever smaller parts of the row: laid from left to right they would lean into towers that say nothing.
 * Of very many, each takes the next place in its column. Returns the height of each centre above the line, px, in the order given.
 * @example pile([0, 0, 10], 2) // => [2, 6, 2]
 */
export function pile(xs: readonly number[], radius: number): number[] {
  if (xs.length > mostPiled) return stacked(xs, radius);
  const heights = new Array<number>(xs.length).fill(radius);
  const laid = new Map<number, number[]>();
  for (const index of scattered(xs)) {
    const cell = Math.floor((xs[index] ?? 0) / (2 * radius));
    heights[index] = lowestFree(xs, heights, { index, radius, near: [laid.get(cell - 1), laid.get(cell), laid.get(cell + 1)] });
    const held = laid.get(cell);
    if (held) held.push(index);
    else laid.set(cell, [index]);
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

type Disc = { readonly x: number; readonly height: number };
type Room = { readonly index: number; readonly radius: number; readonly near: readonly (readonly number[] | undefined)[] };

/**
 * The lowest height at which a disc overlaps none of those near. Each that is in the way lifts it, and nothing lower is free: so the order in
 * which they are asked doesn't matter, and asking goes on until none is in the way.
 */
function lowestFree(xs: readonly number[], heights: readonly number[], { index, radius, near }: Room): number {
  const x = xs[index] ?? 0;
  let height = radius;
  let before = Number.NaN;
  while (height !== before) {
    before = height;
    for (const cell of near)
      for (const other of cell ?? noDiscs) height = liftedBy({ x: (xs[other] ?? 0) - x, height: heights[other] ?? radius }, height, radius);
  }
  return height;
}

const noDiscs: readonly number[] = [];

/** The height of a disc at 0 after it gave way to another. */
function liftedBy({ x, height: centre }: Disc, height: number, radius: number): number {
  if (Math.abs(centre - height) >= 2 * radius) return height;
  const reach = Math.sqrt(Math.max(0, 4 * radius * radius - x * x));
  return centre - reach < height - touch && centre + reach > height ? centre + reach : height;
}
