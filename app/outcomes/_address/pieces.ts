import { CohortError, parseSplitField, parseWhere, type Where } from "@/lib/cohorts";

/** A piece of the address that can't be answered, and what it may be. The piece itself is not repeated: it may hold anything. */
export type Trouble = { readonly parameter: string; readonly expected: string };
export type Refuse = (parameter: string, expected: string) => void;

const mostSplits = 2;

/** The one value of a piece; `null` when it isn't there or blank. */
export function textOf(value: string | string[] | undefined, refuse: () => void): string | null {
  if (Array.isArray(value)) refuse();
  return typeof value === "string" && value !== "" ? value : null;
}

/** Fields of a split, number fields also in bins: `bone`, `gainMm:30/50/80`. */
export function readBy(text: string | null, refuse: Refuse): readonly string[] {
  const fields = text === null ? [] : text.split(",");
  if (!fields.every(isSplit)) refuse("by", "fields of a segment or its patient, such as bone or gainMm:30/50/80");
  if (fields.length > mostSplits) refuse("by", `at most ${mostSplits} fields`);
  return fields;
}

function isSplit(text: string): boolean {
  try {
    parseSplitField(text);
    return true;
  } catch (error) {
    if (error instanceof CohortError) return false;
    throw error;
  }
}

export function readWhere(text: string | null, refuse: Refuse): Where {
  try {
    return text === null ? {} : parseWhere(text);
  } catch (error) {
    if (!(error instanceof CohortError)) throw error;
    refuse("where", `a cohort: ${error.message}`);
    return {};
  }
}

export function readBatch(text: string | null, newest: number, refuse: Refuse): number | null {
  if (text === null) return null;
  const batch = /^\d{1,9}$/.test(text) ? Number(text) : Number.NaN;
  if (!(batch >= 1 && batch <= newest))
    refuse("asOf", newest === 0 ? "left out, since no batch was brought in yet" : `a batch from 1 to ${newest}`);
  return batch;
}
