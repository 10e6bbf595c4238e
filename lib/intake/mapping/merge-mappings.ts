import type { Mapping } from "../types";
import { emptyMapping } from "./empty-mapping";

/** Several mappings as one: of what two say differently the first word stands. */
export function mergeMappings(mappings: readonly Mapping[]): Mapping {
  return [...mappings].reverse().reduce(over, emptyMapping);
}

function over(below: Mapping, above: Mapping): Mapping {
  const fields = new Set([...Object.keys(below.values), ...Object.keys(above.values)]);
  return {
    columns: { ...below.columns, ...above.columns },
    units: { ...below.units, ...above.units },
    dates: above.dates ?? below.dates,
    decimal: above.decimal ?? below.decimal,
    values: Object.fromEntries([...fields].map((field) => [field, { ...below.values[field], ...above.values[field] }])),
    answers: { ...below.answers, ...above.answers },
  };
}
