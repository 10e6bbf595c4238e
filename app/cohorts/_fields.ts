import { labelOfCode, ownIndexId } from "@/lib/codebook";
import { conditionField, conditionFieldIds, conditionUnit, isDerivedField } from "@/lib/cohorts";
import type { FieldGroup, OfferedField, OfferedValue } from "./_client/offered";

type OwnIndex = { readonly id: string; readonly name: string; readonly unit: string };

/** A measure that has the name and the meaning of a field is offered once. */
const twice: ReadonlySet<string> = new Set(["gain"]);

const headings = [
  "The patient",
  "Before surgery",
  "At the operation",
  "By the end of distraction",
  "Later",
  "Worked out from what is held",
] as const;

/** Everything that a condition can name, by when it is known: what was known later than the operation is a result. */
export function offeredFields(units: readonly string[], indices: readonly OwnIndex[], named: ReadonlySet<string>): readonly FieldGroup[] {
  const ids = conditionFieldIds().filter((id) => !twice.has(id) || named.has(id));
  const own = indices.map(({ id, name, unit }): OfferedField => ({ id, label: name, kind: "number", unit, values: [] }));
  // named in the address, and no longer in the settings
  const gone = [...named].filter((id) => ownIndexId.test(id) && !indices.some((index) => index.id === id)).map((id) => offered(id, units));
  const byTime = headings.map((heading) => ({
    heading,
    fields: ids.filter((id) => headingOf(id) === heading).map((id) => offered(id, units)),
  }));
  return [...byTime, { heading: "Indices of the unit’s own", fields: [...own, ...gone] }].filter(({ fields }) => fields.length > 0);
}

const personFields: ReadonlySet<string> = new Set([
  "unit",
  "sex",
  "indication",
  "aetiology",
  "smoking",
  "diabetes",
  "vitaminDDeficiency",
  "antiInflammatoryUse",
  "earlierInfection",
  "permittedUse",
  "earlierLengtheningElsewhere",
  "followUpStatus",
  "line",
  "proportionReference",
]);

function headingOf(id: string): (typeof headings)[number] {
  if (isDerivedField(id)) return "Worked out from what is held";
  if (personFields.has(id)) return "The patient";
  const known = conditionField(id)?.known;
  if (known === "before") return "Before surgery";
  if (known === "operation") return "At the operation";
  return known === "distraction-end" ? "By the end of distraction" : "Later";
}

function offered(id: string, units: readonly string[]): OfferedField {
  const field = conditionField(id);
  const label = field?.label ?? id;
  if (field?.kind === "number" || field?.kind === "count") return { id, label, kind: "number", unit: conditionUnit(id), values: [] };
  return { id, label, kind: "values", unit: null, values: [...valuesOf(id, units), { value: null, text: "not recorded" }] };
}

function valuesOf(id: string, units: readonly string[]): readonly OfferedValue[] {
  const field = conditionField(id);
  if (field?.kind === "code") return field.codes.map((code) => ({ value: code, text: labelOfCode(code).toLowerCase() }));
  if (field?.kind === "flag")
    return [
      { value: true, text: "yes" },
      { value: false, text: "no" },
    ];
  return id === "unit" ? units.map((code) => ({ value: code, text: labelOfCode(code) })) : [];
}
