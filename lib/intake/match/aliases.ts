import { type Field, type FileOnlyField, fieldsOf, fileOnlyFields, fold, snake, type TableName } from "@/lib/codebook";
import { baseOf, saidAt } from "./moments";
import { type SheetKind, tableOfKind } from "./sheet-kind";
import { fileTarget, type SpreadField, type Target, target } from "./target";

export type Alias = {
  readonly target: Target;
  /** Means the field only when a unit of time stands in the header. */
  readonly withTimeUnit: boolean;
};
export type AliasIndex = {
  readonly plain: ReadonlyMap<string, Alias>;
  /** Words that mean a field only with a number before, after or between them. */
  readonly numbered: ReadonlyMap<string, Alias>;
};
type Entry = readonly [words: string, alias: Alias];

const releaseHeaders = ["releases", "release", "soft tissue release", "soft tissue releases"];
const sideless: readonly (readonly [SpreadField, string])[] = [
  ["femurOfSideMm", "femur length"],
  ["tibiaOfSideMm", "tibia length"],
];
const namesOfSegment = new Set(["person", "bone", "side", "surgeryDay"]);
const prefixes: Readonly<Partial<Record<TableName, readonly string[]>>> = {
  event: ["complication", "event", "adverse event", "problem"],
  visit: ["visit", "review", "clinic", "x ray", "film"],
  score: ["score", "prom"],
};

const built = new Map<SheetKind, AliasIndex>();

/** All headers that mean a field in a kind of sheet, folded. */
export function aliasIndex(kind: SheetKind): AliasIndex {
  const held = built.get(kind);
  if (held) return held;
  const made = kind === "one-sheet" ? { plain: index(oneSheetEntries()), numbered: index(numberedEntries()) } : oneTable(kind);
  built.set(kind, made);
  return made;
}

/** Folded words of a field: template header, id, label and aliases. */
export function wordsOf(id: string, field: Field): readonly string[] {
  return [snake(id), id, field.label, ...(field.aliases ?? [])].map(fold);
}

function entriesOf(table: TableName, skip: ReadonlySet<string> = new Set()): Entry[] {
  return fieldsOf(table)
    .filter(([id, field]) => !field.madeByStrip && !skip.has(id))
    .flatMap(([id, field]) => [
      ...wordsOf(id, field).map((words): Entry => [words, { target: target(table, id), withTimeUnit: false }]),
      ...(field.aliasesWithTimeUnit ?? []).map((words): Entry => [fold(words), { target: target(table, id), withTimeUnit: true }]),
    ]);
}

function fileEntries(fields: readonly FileOnlyField[]): Entry[] {
  return fields.flatMap((id) => {
    const words = [
      snake(id),
      id,
      fileOnlyFields[id].label,
      ...fileOnlyFields[id].aliases,
      ...(id === "localId" ? fileOnlyFields.localId.secondChoice : []),
    ];
    return words.map((word): Entry => [fold(word), { target: fileTarget(id), withTimeUnit: false }]);
  });
}

function oneSheetEntries(): Entry[] {
  return [
    ...fileEntries(["localId", "dateOfBirth", "surgeonName"]),
    ...entriesOf("person"),
    ...entriesOf("segment"),
    ...releaseHeaders.map((words): Entry => [words, { target: fileTarget("releases"), withTimeUnit: false }]),
    ...momentEntries(),
  ];
}

/** Body measures of a one-sheet row, each before and final. */
function momentEntries(): Entry[] {
  const entries = fieldsOf("bodyMeasure").filter(([id, field]) => !field.madeByStrip && id !== "occasion");
  const measured = entries.flatMap(([id, field]) => {
    const bases = new Set(wordsOf(id, field).map(baseOf));
    return [...bases].flatMap((base) =>
      saidAt(base).map(([words, moment]): Entry => [words, { target: target("bodyMeasure", id, moment), withTimeUnit: false }]),
    );
  });
  const dates = (["before", "final"] as const).flatMap((moment) =>
    saidAt("height")
      .filter(([, at]) => at === moment)
      .map(([words]): Entry => [`date of ${words}`, { target: target("bodyMeasure", "bodyDay", moment), withTimeUnit: false }]),
  );
  const ofSide = sideless.flatMap(([id, base]) =>
    saidAt(base).map(([words, moment]): Entry => [words, { target: fileTarget(id, moment), withTimeUnit: false }]),
  );
  return [...dates, ...measured, ...ofSide];
}

function numberedEntries(): Entry[] {
  return (["event", "visit", "score"] as const).flatMap((table) => {
    const own = entriesOf(table, namesOfSegment);
    const [main, day] = { event: ["eventType", "onsetDay"], visit: ["visitDay", "visitDay"], score: ["scoreCode", "scoreDay"] }[table] as [
      string,
      string,
    ];
    const prefixed = (prefixes[table] ?? []).flatMap((prefix): Entry[] => [
      [prefix, { target: target(table, main), withTimeUnit: false }],
      [`${prefix} date`, { target: target(table, day), withTimeUnit: false }],
      ...own.map(([words, alias]): Entry => [`${prefix} ${words}`, alias]),
    ]);
    return [...own, ...prefixed];
  });
}

function oneTable(kind: Exclude<SheetKind, "one-sheet">): AliasIndex {
  const episode = entriesOf("segment").filter(([, alias]) => alias.target.field === "episode");
  const unit = entriesOf("person").filter(([, alias]) => alias.target.field === "unit");
  const naming = kind === "visits" || kind === "events" ? episode : [];
  const own = entriesOf(tableOfKind[kind]);
  return { plain: index([...fileEntries(["localId"]), ...(kind === "persons" ? [] : unit), ...own, ...naming]), numbered: new Map() };
}

/** First entry wins: a field's own words come before those made of prefixes and moments. */
function index(entries: readonly Entry[]): ReadonlyMap<string, Alias> {
  const map = new Map<string, Alias>();
  for (const [words, alias] of entries) if (words !== "" && !map.has(words)) map.set(words, alias);
  return map;
}
