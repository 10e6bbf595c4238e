/** Labels of groups, numbered from 0. */
export type GroupLabels = readonly (string | number)[];

/** The group labels in the order of their first row. */
export function levelsOf(group: GroupLabels): (string | number)[] {
  return [...new Set(group)];
}

/**
 * The pair of groups compared: the one given, or the two that occur.
 * @throws RangeError when other than two occur and none is given, or a given one has no row
 */
export function pairOf(
  caller: string,
  group: GroupLabels,
  between?: readonly [string | number, string | number],
): [string | number, string | number] {
  const levels = levelsOf(group);
  if (!between) {
    if (levels.length !== 2) throw new RangeError(`${caller} requires two groups, received ${levels.length}`);
    return [levels[0] as string | number, levels[1] as string | number];
  }
  if (between[0] === between[1]) throw new RangeError(`${caller} requires two different groups, received the same one twice`);
  const missing = between.findIndex((level) => !levels.includes(level));
  if (missing >= 0)
    throw new RangeError(`${caller} requires rows in both groups, received none in the ${missing === 0 ? "first" : "second"}`);
  return [between[0], between[1]];
}

/** Row numbers whose group is one of the pair, and 0 or 1 for each. */
export function rowsOfPair(group: GroupLabels, [first, second]: readonly [string | number, string | number]) {
  const rows: number[] = [];
  const sides: number[] = [];
  group.forEach((label, i) => {
    if (label !== first && label !== second) return;
    rows.push(i);
    sides.push(label === first ? 0 : 1);
  });
  return { rows, sides: Int32Array.from(sides) };
}
