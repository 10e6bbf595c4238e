/** How far a commit is: rows looked at beside what was held, rows written, and rows gone into the content hash. */
export type CommitPace = { readonly step: "check" | "write" | "seal"; readonly done: number; readonly of: number };
export type OnPace = (pace: CommitPace) => void;

const rowsAPace = 2000;

/** Counts the rows of a step, and tells of them at its start and every so often. */
export function tickOf(onPace: OnPace | undefined, step: CommitPace["step"], of: () => number): () => void {
  if (!onPace) return () => undefined;
  const all = of();
  let done = 0;
  onPace({ step, done, of: all });
  return () => {
    if (++done % rowsAPace === 0) onPace({ step, done, of: all });
  };
}
