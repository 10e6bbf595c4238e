/** How numbers are written in groups: NHS 3-3-4, CHI 6-4, SIN 3-3-3, SSN 3-2-4, Medicare 4-5-1(-1), Aadhaar 4-4-4, and so on. */
const groupings: readonly (readonly number[])[] = [
  [3, 3, 4],
  [4, 3, 3],
  [6, 4],
  [2, 2, 2, 4],
  [3, 3, 3],
  [4, 2, 3],
  [4, 5, 1],
  [4, 5, 1, 1],
  [4, 4, 4],
  [4, 4, 4, 4],
  [7, 9, 1, 1],
];

const shortest = 7;
const longest = 19;

/** Digits that could be one number. `solid`: written without separators. */
export type Candidate = { readonly digits: string; readonly solid: boolean };

/**
 * Runs of digits of a clean text that could be a number of someone's: each unbroken run, each row of groups written as a published number
 * is, and the whole cell when it holds nothing but digits and separators. Each group starts at most one attempt for each grouping, so the
 * work grows with the text and no faster.
 */
export function numberCandidates(text: string): readonly Candidate[] {
  const found = new Map<string, boolean>();
  const add = (digits: string, solid: boolean) => {
    if (digits.length >= shortest && digits.length <= longest) found.set(digits, solid || found.get(digits) === true);
  };
  // between a run and its neighbours stands something other than a separator: each run is looked at alone
  for (const run of text.match(/\d+(?:[ ./-]{1,3}\d+)*/g) ?? []) {
    const groups = run.split(/[ ./-]+/);
    for (const group of groups) add(group, true);
    for (const number of writtenInGroups(groups)) add(number, false);
    if (run.length === text.length && readsAsOneNumber(run, groups)) add(groups.join(""), false);
  }
  return [...found].map(([digits, solid]) => ({ digits, solid }));
}

function writtenInGroups(groups: readonly string[]): readonly string[] {
  return groups.flatMap((_, from) =>
    groupings.filter((grouping) => isWrittenAs(groups, from, grouping)).map(({ length }) => groups.slice(from, from + length).join("")),
  );
}

function isWrittenAs(groups: readonly string[], from: number, grouping: readonly number[]): boolean {
  return grouping.every((length, at) => groups[from + at]?.length === length);
}

// "10/12/14/16/18" is a list; "94 34 76 58 70" may be a number
function readsAsOneNumber(run: string, groups: readonly string[]): boolean {
  return groups.length <= 4 || !/[./]/.test(run);
}
