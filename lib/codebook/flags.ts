const yes = new Set(["yes", "y", "true", "1", "x", "+"]);
const no = new Set(["no", "n", "false", "0", "none"]);
const notRecorded = new Set(["", "nk", "not known"]);

/** A folded cell of a flag column. `undefined`: not a flag's spelling. Blank never means false. */
export function flagOf(folded: string): boolean | null | undefined {
  if (yes.has(folded)) return true;
  if (no.has(folded)) return false;
  return notRecorded.has(folded) ? null : undefined;
}
