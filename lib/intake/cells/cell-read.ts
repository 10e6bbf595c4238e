import type { FindingCode, Value } from "@/lib/codebook";
import type { About } from "../findings/wording";

/** Something to say about a cell or row, before it has a place and a wording. */
export type Fact = { readonly code: FindingCode; readonly found: string; readonly about?: About };

/** A day as a file gives it: a calendar day (days since 1970), or days after that row's surgery. */
export type RawDay = { readonly on: number; readonly swapped: number | null } | { readonly after: number };

/** A cell as read. `also`: further fields that the same cell fills (*Femur L* fills the side too). */
export type CellRead = {
  readonly value: Value | RawDay;
  readonly facts: readonly Fact[];
  readonly also: Readonly<Record<string, Value>> | null;
};

export type ReadCell = (cell: string) => CellRead;

const noFacts: readonly Fact[] = [];

export function readAs(value: Value | RawDay, facts: readonly Fact[] = noFacts): CellRead {
  return { value, facts, also: null };
}

export function unread(code: FindingCode, found: string, about: About = {}): CellRead {
  return { value: null, facts: [{ code, found, about }], also: null };
}

export const blankCell: CellRead = readAs(null);

export function isDay(value: Value | RawDay | undefined): value is RawDay {
  return typeof value === "object" && value !== null;
}
