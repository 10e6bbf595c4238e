import { deviceKinds, type Field, fieldsOf, healingStatuses, ownIndexId } from "@/lib/codebook";
import { gainMeasures, indexDefinitions } from "@/lib/outcomes";

const number = (label: string): Field => ({ kind: "number", unit: "points", label, role: "plain", known: "later" });

/** What is worked out when asked, from what is held: a condition may name it like a field. */
const derivedFields: readonly (readonly [id: string, field: Field])[] = [
  ["deviceKind", { kind: "code", codes: deviceKinds, label: "Kind of device", role: "plain", known: "operation" }],
  ["healingStatus", { kind: "code", codes: healingStatuses, label: "Healing status", role: "plain", known: "later" }],
  ["followUpDays", number("Days followed from surgery")],
  ["reamedMinusNailMm", { ...number("Reamed diameter less nail diameter"), known: "operation" }],
  ...indexDefinitions.map(
    ({ id, title, to }) => [id, { ...number(title), known: to.startsWith("distraction") ? "distraction-end" : "later" } as const] as const,
  ),
  ...gainMeasures
    .filter(({ kind }) => kind === "number")
    .map(({ id, title }) => [id, { ...number(title), known: id === "gain-lost" ? "later" : "distraction-end" } as const] as const),
];

const derivedUnits: ReadonlyMap<string, string> = new Map([
  ["followUpDays", "days"],
  ["reamedMinusNailMm", "mm"],
  ...[...indexDefinitions, ...gainMeasures].map(({ id, unit }) => [id, unit] as const),
]);

/** Fields that a condition or a split may name: those of the segment and of its person, but no pseudonym and no day, and derived ones. */
const conditionFields: ReadonlyMap<string, Field> = new Map([
  ...[...fieldsOf("segment"), ...fieldsOf("person")].filter(([, field]) => field.kind !== "keyed" && field.kind !== "day"),
  ...derivedFields,
]);
const derivedIds: ReadonlySet<string> = new Set(derivedFields.map(([id]) => id));

/** An index of the unit's own is a number like the built-in ones; its name and unit stand in the settings, which a cohort doesn't know. */
export function conditionField(id: string): Field | undefined {
  return conditionFields.get(id) ?? (ownIndexId.test(id) ? { ...number(`Index ${id}`), known: "later" } : undefined);
}

export function conditionFieldIds(): readonly string[] {
  return [...conditionFields.keys()];
}

/** Whether a condition's field is worked out and not held. */
export function isDerivedField(id: string): boolean {
  return derivedIds.has(id) || ownIndexId.test(id);
}

/**
 * The unit in which a condition's numbers are read; `null` where they have none.
 * @example conditionUnit("surgery-to-consolidation") // => "days/cm"
 */
export function conditionUnit(id: string): string | null {
  const derived = derivedUnits.get(id);
  if (derived !== undefined) return derived;
  const field = conditionFields.get(id);
  if (field?.kind !== "number") return null;
  return field.unit === "deg" ? "°" : field.unit;
}
