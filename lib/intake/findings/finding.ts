import { type FindingCode, findingSeverities } from "@/lib/codebook";
import type { Finding } from "../types";
import { type About, wordingOf } from "./wording";

export type Place = {
  readonly file?: string | null;
  readonly row?: number | null;
  readonly column?: string | null;
  readonly field?: string | null;
};

/** A finding with its wording: `found` describes what stands in the cell, `about` holds the facts that the wording needs. */
export function finding(code: FindingCode, place: Place, found: string, about: About = {}): Finding {
  const { file = null, row = null, column = null, field = null } = place;
  return {
    code,
    severity: findingSeverities[code],
    file,
    row,
    column,
    field,
    found,
    ...wordingOf(code, { ...about, field: about.field ?? field ?? "" }),
  };
}
