export type Spot = { readonly x: number; readonly y: number };

/** How many places to each side are tried before marks may lie on each other. */
const mostSteps = 12;

type Room = {
  readonly radius: number;
  /** How far a mark may be moved, px across. */
  readonly reach: number;
  /** Px upwards for each px to the right: marks move along this slope. */
  readonly slope: number;
};

/**
 * Moves marks that would lie on each other apart along a slope, without chance: from the lowest upwards each takes the nearest free place,
 * right before left. Where no place within reach is left a mark lies on others. Returns the spots in the order given.
 * @example swarm([{ x: 0, y: 9 }, { x: 0, y: 9 }], { radius: 2, reach: 10, slope: 0 }) // => [{ x: 0, y: 9 }, { x: 4, y: 9 }]
 */
export function swarm(spots: readonly Spot[], room: Room): Spot[] {
  const placed = [...spots];
  const grid = gridOf(2 * room.radius);
  const steps = stepsWithin(room);
  const order = spots.map((_, index) => index).sort((a, b) => byHeight(spots[a], spots[b]) || a - b);
  for (const index of order) {
    const home = spots[index] as Spot;
    const tries = steps.map((dx) => ({ x: home.x + dx, y: home.y - dx * room.slope }));
    const spot = tries.find((one) => grid.isFree(one)) ?? home;
    grid.add(spot);
    placed[index] = spot;
  }
  return placed;
}

function byHeight(a: Spot | undefined, b: Spot | undefined): number {
  return (b?.y ?? 0) - (a?.y ?? 0) || (a?.x ?? 0) - (b?.x ?? 0);
}

/** 0, a diameter right, a diameter left, two right … as far as the reach. */
function stepsWithin({ radius, reach, slope }: Room): number[] {
  const stride = (2 * radius) / Math.hypot(1, slope);
  const steps = Math.min(mostSteps, Math.floor(reach / stride));
  return [0, ...Array.from({ length: steps }, (_, step) => [stride * (step + 1), -stride * (step + 1)]).flat()];
}

/** Spots by square, so that only neighbours are asked whether they touch. */
function gridOf(cell: number) {
  const held = new Map<string, Spot[]>();
  const at = ({ x, y }: Spot) => [Math.floor(x / cell), Math.floor(y / cell)] as const;
  const touches = (a: Spot, b: Spot) => Math.hypot(a.x - b.x, a.y - b.y) < cell - 1e-6;
  return {
    add(spot: Spot): void {
      const key = at(spot).join();
      const there = held.get(key);
      if (there) there.push(spot);
      else held.set(key, [spot]);
    },
    isFree(spot: Spot): boolean {
      const [column, row] = at(spot);
      for (let dx = -1; dx <= 1; dx++)
        for (let dy = -1; dy <= 1; dy++) if (held.get(`${column + dx},${row + dy}`)?.some((other) => touches(spot, other))) return false;
      return true;
    },
  };
}
