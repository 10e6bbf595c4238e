import { type Field, fieldsOf, fileOnlyFields, type TableName, tables } from "@/lib/codebook";
import type { SheetKind } from "@/lib/intake";
import type { Option } from "./choose";

const tableOf: Readonly<Record<Exclude<SheetKind, "one-sheet">, TableName>> = {
  persons: "person",
  "body-measures": "bodyMeasure",
  visits: "visit",
  events: "event",
  scores: "score",
};
const mostNumbers = 6;

/** The fields that a column of a sheet may fill, by the FIELD of a mapping. */
export function fieldOptions(kind: SheetKind): readonly Option[] {
  if (kind !== "one-sheet") return [localId, ...ofTable(tableOf[kind])];
  const numbered = (["event", "visit", "score"] as const).flatMap((table) =>
    Array.from({ length: mostNumbers }, (_, i) => ofTable(table).map((option) => suffixed(option, String(i + 1), String(i + 1)))).flat(),
  );
  const moments = ofTable("bodyMeasure").flatMap((option) => [
    suffixed(option, "before", "before surgery"),
    suffixed(option, "final", "final"),
  ]);
  return [...fileOnly, ...ofTable("person"), ...ofTable("segment"), ...spread, ...moments, ...numbered];
}

const fileOnly: readonly Option[] = Object.entries(fileOnlyFields).map(([id, { label, aliases }]) => ({
  id,
  label,
  group: "turned, never sent",
  words: aliases.join(" "),
}));
const localId = fileOnly.find(({ id }) => id === "localId") as Option;

const spread: readonly Option[] = [
  { id: "releases", label: "Releases, as a list", group: "segment", words: "soft tissue" },
  { id: "femurOfSideMm.before", label: "Femur of the row’s side, before surgery", group: "body measures", words: "length" },
  { id: "tibiaOfSideMm.before", label: "Tibia of the row’s side, before surgery", group: "body measures", words: "length" },
  { id: "femurOfSideMm.final", label: "Femur of the row’s side, final", group: "body measures", words: "length" },
  { id: "tibiaOfSideMm.final", label: "Tibia of the row’s side, final", group: "body measures", words: "length" },
];

const besides: Readonly<Partial<Record<TableName, ReadonlySet<string>>>> = {
  visit: new Set(["person", "bone", "side", "surgeryDay"]),
  event: new Set(["person", "bone", "side", "surgeryDay", "eventNumber"]),
};

function ofTable(table: TableName): readonly Option[] {
  const named = besides[table] ?? new Set<string>();
  return fieldsOf(table)
    .filter(([id, { kind, madeByStrip }]) => !madeByStrip && kind !== "keyed" && !named.has(id))
    .map(([id, field]) => ({ id, label: field.label, group: tables[table].label.toLowerCase(), words: wordsOf(id, field) }));
}

function wordsOf(id: string, { aliases = [] }: Field): string {
  return [id.replace(/([A-Z])/g, " $1"), ...aliases].join(" ");
}

function suffixed(option: Option, suffix: string, words: string): Option {
  return { ...option, id: `${option.id}.${suffix}`, label: `${option.label}, ${words}`, words: `${option.words} ${words}` };
}

const kinds: readonly SheetKind[] = ["one-sheet", "persons", "body-measures", "visits", "events", "scores"];
const labels = new Map(kinds.flatMap((kind) => fieldOptions(kind).map(({ id, label }) => [id, label] as const)));

/** The field's name as people read it. */
export function labelOfField(id: string): string {
  return labels.get(id) ?? id;
}
