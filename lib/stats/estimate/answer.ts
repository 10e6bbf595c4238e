import type { Note } from "../notes";

/** What every situation may ask beside its rows. */
export interface Asked {
  readonly confidence?: number;
  /** p values appear only when asked for. */
  readonly test?: boolean;
}

/** A test's own record; `p` null means that the interval is to be read instead. */
export interface TestAnswer {
  readonly p: number | null;
  readonly method: string;
  readonly notes: readonly Note[];
}

/**
 * The records that a situation gets, which of them is shown first, and what is said beside them.
 * A record that could not be computed is null; "values" leads when there are too few patients for anything else.
 */
export interface Answer<Records extends object> {
  readonly lead: (keyof Records & string) | "values";
  readonly records: Records;
  readonly test: TestAnswer | null;
  readonly notes: readonly Note[];
}

/** Notes without repetition: several records may bear the same one. */
export function notesOnce(...lists: readonly (readonly Note[])[]): readonly Note[] {
  const seen = new Set<string>();
  return lists.flat().filter((note) => {
    const key = JSON.stringify(note);
    return seen.size < seen.add(key).size;
  });
}

export function tooFew(patients: number, needed: number): Note {
  return { code: "too-few-for-interval", patients, needed };
}
