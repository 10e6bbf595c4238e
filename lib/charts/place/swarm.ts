export type Spot = { readonly x: number; readonly y: number };

/** How many places to each side are tried before marks may lie on each other. */
const mostSteps = 12;

/** More marks than these cover a field wherever they are moved: each stays in its own place. */
const mostMoved = 10_000;

type Room = {
  readonly radius: number;
  /** How far a mark may be moved, px across. */
  readonly reach: number;
  /** Px upwards for each px to the right: marks move along this slope. */
  readonly slope: number;
  /** What no mark is moved out of. */
  readonly field?: { readonly left: number; readonly right: number; readonly top: number; readonly bottom: number };
};

/**
 * Moves marks that would lie on each other apart along a slope, without chance: from the lowest upwards each takes the nearest free place,
 * right before left. Where no place within reach is left a mark lies on others. Returns the spots in the order given.
 * @example swarm([{ x: 0, y: 9 }, { x: 0, y: 9 }], { radius: 2, reach: 10, slope: 0 }) // => [{ x: 0, y: 9 }, { x: 4, y: 9 }]
 */
export function swarm(spots: readonly Spot[], room: Room): Spot[] {
  if (spots.length > mostMoved) return [...spots];
  const placed = [...spots];
  const grid = gridOf(2 * room.radius);
  const steps = stepsWithin(room);
  const order = spots.map((_, index) => index).sort((a, b) => byHeight(spots[a], spots[b]) || a - b);
  for (const index of order) {
    const home = spots[index] as Spot;
    const moved = (dx: number) => (dx === 0 ? home : { x: home.x + dx, y: home.y - dx * room.slope });
    const free = steps.find((dx) => (dx === 0 || isInside(moved(dx), room)) && grid.isFree(moved(dx))) ?? 0;
    const spot = moved(free);
    grid.add(spot);
    placed[index] = spot;
  }
  return placed;
}

function isInside({ x, y }: Spot, { field }: Room): boolean {
  return field === undefined || (x >= field.left && x <= field.right && y >= field.top && y <= field.bottom);
}

function byHeight(a: Spot | undefined, b: Spot | undefined): number {
  return (b?.y ?? 0) - (a?.y ?? 0) || (a?.x ?? 0) - (b?.x ?? 0);
}

/** 0, a diameter right, a diameter left, two right … as far as the reach. */
function stepsWithin({ radius, reach, slope }: Room): number[] {
  const step = (2 * radius) / Math.hypot(1, slope);
  const steps = Math.min(mostSteps, Math.floor(reach / step));
  return [0, ...Array.from({ length: steps }, (_, i) => [step * (i + 1), -step * (i + 1)]).flat()];
}

/** Rows of squares in a key: more than any drawing has. */
const stride = 2 ** 20;

/** Spots by square, so that only neighbours are asked whether they touch. */
function gridOf(cell: number) {
  const held = new Map<number, Spot[]>();
  const keyOf = ({ x, y }: Spot) => Math.floor(x / cell) * stride + Math.floor(y / cell);
  const least = (cell - 1e-6) ** 2;
  return {
    add(spot: Spot): void {
      const there = held.get(keyOf(spot));
      if (there) there.push(spot);
      else held.set(keyOf(spot), [spot]);
    },
    isFree(spot: Spot): boolean {
      const key = keyOf(spot);
      for (let column = -stride; column <= stride; column += stride)
        for (let row = -1; row <= 1; row++)
          for (const { x, y } of held.get(key + column + row) ?? []) if ((x - spot.x) ** 2 + (y - spot.y) ** 2 < least) return false;
      return true;
    },
  };
}
