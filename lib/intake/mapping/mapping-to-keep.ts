import { detectInCell, detectInHeader } from "../detect";
import type { Mapping } from "../types";

/**
 * A mapping as it may be written to a disk: without headers or spellings in which a detector sees a name, number or date of a person, in
 * doubt too. What is left out is asked about again.
 */
export function mappingToKeep({ columns, units, values, ...rest }: Mapping): Mapping {
  return {
    ...rest,
    columns: only(columns, isPlainHeader),
    units: only(units, isPlainHeader),
    values: Object.fromEntries(Object.entries(values).map(([field, spellings]) => [field, only(spellings, isPlainSpelling)])),
  };
}

function only<T>(record: Readonly<Record<string, T>>, keep: (key: string) => boolean): Record<string, T> {
  return Object.fromEntries(Object.entries(record).filter(([key]) => keep(key)));
}

function isPlainHeader(header: string): boolean {
  return detectInHeader(header).length === 0;
}

function isPlainSpelling(text: string): boolean {
  return detectInCell(text).length === 0;
}
