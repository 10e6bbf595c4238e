import { type Field, fieldsOf } from "@/lib/codebook";

/** Fields that a condition or a split may name: those of the segment and of its person, but no pseudonym and no day. */
const conditionFields: ReadonlyMap<string, Field> = new Map(
  [...fieldsOf("segment"), ...fieldsOf("person")].filter(([, field]) => field.kind !== "keyed" && field.kind !== "day"),
);

export function conditionField(id: string): Field | undefined {
  return conditionFields.get(id);
}

export function conditionFieldIds(): readonly string[] {
  return [...conditionFields.keys()];
}
