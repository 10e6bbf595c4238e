import { byTable, type TableName, tables, type Value } from "@/lib/codebook";
import { betterOccasion, type Made, saidBeside } from "../merge/how-made";
import type { StrippedRows } from "../types";
import type { AnyRow } from "./blank-row";
import { numberEvents } from "./number-events";
import { eachRow } from "./pace";
import { rowKey } from "./row-key";
import { type StrippedDraft, type StrippedPart, say } from "./stripped-draft";

type Held = {
  readonly row: AnyRow;
  readonly from: StrippedDraft;
  /** The word that gave a body measure its occasion: what the row has become doesn't tell how good that word was. */
  said: Made;
};
export type Gathered = Readonly<Record<TableName, Map<string, Held>>>;

const nothingSaid: Made = { from: null, occasion: null };

/** Tables of which a file may say the same row in parts. */
const merging: ReadonlySet<TableName> = new Set<TableName>(["person", "bodyMeasure"]);
/** Fields that say how a row was made; the better word stands. */
const howMade: ReadonlySet<string> = new Set(["occasion", "bodyDayFrom"]);

/**
 * Rows of all drafts that stand, one a natural key. A row of a file that says something else of the same person, segment or day than a row
 * above it is set aside (`repeats-conflict`), one that repeats it too (`duplicate-row`); a later file is the newer word.
 */
export async function gatherRows(
  drafts: readonly StrippedDraft[],
  stands: (draft: StrippedDraft) => boolean,
  pace: Parameters<typeof eachRow>[2] = {},
): Promise<Gathered> {
  const gathered: Gathered = byTable(() => new Map<string, Held>());
  const onLine = linesOf(drafts, stands);
  const gather = (draft: StrippedDraft) => {
    if (!stands(draft)) return;
    onLine(draft);
    if (!stands(draft)) return;
    numberEvents(draft, (key) => gathered.event.get(key)?.row);
    const keys = draft.parts.map(({ table, row }) => rowKey(table, row));
    checkRepeats(draft, keys, gathered);
    if (stands(draft)) keep(draft, keys, gathered);
  };
  await eachRow(drafts, gather, pace);
  return gathered;
}

/** Sets an undated row aside where another row of these files has the person's days from dates, whichever comes first. */
function linesOf(drafts: readonly StrippedDraft[], stands: (draft: StrippedDraft) => boolean): (draft: StrippedDraft) => void {
  const dated = new Map<string, number>();
  // most files have dates throughout
  const anyUndated = drafts.some(({ line }) => line === "undated");
  if (anyUndated)
    for (const one of drafts) if (one.line === "dated" && one.keyed && stands(one)) dated.set(one.keyed.person, one.draft.row);
  return (draft) => {
    const other = draft.line === "undated" && draft.keyed ? dated.get(draft.keyed.person) : undefined;
    if (other !== undefined)
      say(draft, { code: "line-differs", field: "surgeryDay", found: "a row without dates beside one with them", about: { other } });
  };
}

function checkRepeats(draft: StrippedDraft, keys: readonly string[], gathered: Gathered): void {
  for (const [i, { table, row, nth }] of draft.parts.entries()) {
    const conflict = (field: string) => ({ code: "repeats-conflict", field: nth === null ? field : `${field}.${nth}` }) as const;
    const beside = earlierPart(draft, keys, i);
    const differing = beside ? conflictOf(beside.row, row) : null;
    if (differing !== null) say(draft, { ...conflict(differing), found: "a value unlike that of another column" });
    const held = gathered[table].get(keys[i] as string);
    if (!held || held.from.draft.file !== draft.draft.file) continue;
    const place = { found: "a value unlike that of another row", about: { other: held.from.draft.row } };
    const field = conflictOf(held.row, row);
    if (field !== null) say(draft, { ...conflict(field), ...place });
    else if (!merging.has(table)) say(draft, { code: "duplicate-row", field: null, found: "a row that says the same", about: place.about });
  }
}

/** A part of the same row that falls on the same key: a height before and a final one of one date, say. */
function earlierPart({ parts }: StrippedDraft, keys: readonly string[], i: number): StrippedPart | undefined {
  const first = keys.indexOf(keys[i] as string);
  return first < i && parts[first]?.table === parts[i]?.table ? parts[first] : undefined;
}

/** The first field in which two rows say different things. */
export function conflictOf(held: AnyRow, row: AnyRow): string | null {
  for (const field in row) {
    const said = row[field] as Value;
    const before = held[field] as Value;
    if (said !== null && before !== null && said !== before && !howMade.has(field)) return field;
  }
  return null;
}

function keep(draft: StrippedDraft, keys: readonly string[], gathered: Gathered): void {
  for (const [i, { table, row }] of draft.parts.entries()) {
    const key = keys[i] as string;
    const held = gathered[table].get(key);
    if (held) mergeInto(held, row);
    else gathered[table].set(key, { row, from: draft, said: table === "bodyMeasure" ? wordOf(row) : nothingSaid });
  }
}

function mergeInto(held: Held, row: AnyRow): void {
  for (const field in row) if (row[field] !== null && !howMade.has(field)) held.row[field] = row[field] as Value;
  if (!("bodyDayFrom" in row)) return;
  const said = wordOf(row);
  held.row.bodyDayFrom = saidBeside(wordOf(held.row), said).from ?? held.row.bodyDayFrom ?? null;
  held.said = betterOccasion(held.said, said);
  held.row.occasion = held.said.occasion;
}

const wordOf = ({ bodyDayFrom = null, occasion = null }: AnyRow): Made => ({ from: bodyDayFrom, occasion });

/** Gathered rows as the registry takes them. The only place where rows become stripped ones. */
export function strippedRows(gathered: Gathered): StrippedRows {
  const rows = byTable((table) => Array.from(gathered[table].values(), ({ row }) => row));
  return { ...rows, bodyMeasure: dropRepeatedFinals(rows.bodyMeasure) } as Record<TableName, readonly object[]> as StrippedRows;
}

/** Of final body measures taken at last follow-up, an equal one on a later day adds nothing (ids.md §3). */
function dropRepeatedFinals(rows: readonly AnyRow[]): readonly AnyRow[] {
  const taken = new Map<Value, AnyRow[]>();
  for (const row of rows) {
    if (row.bodyDayFrom !== "last-follow-up") continue;
    const own = taken.get(row.person as Value);
    if (own) own.push(row);
    else taken.set(row.person as Value, [row]);
  }
  const repeated = new Set<AnyRow>();
  for (const own of taken.values()) for (const row of repeatsIn(own)) repeated.add(row);
  return repeated.size === 0 ? rows : rows.filter((row) => !repeated.has(row));
}

/** Of one person's final measures, those that say what an earlier day says. */
function repeatsIn(own: AnyRow[]): readonly AnyRow[] {
  if (own.length < 2) return [];
  const seen = new Set<string>();
  return own
    .sort((a, b) => Number(a.bodyDay) - Number(b.bodyDay))
    .filter((row) => {
      const said = JSON.stringify(measured.map((field) => row[field]));
      const isKnown = seen.has(said);
      seen.add(said);
      return isKnown;
    });
}

const measured = Object.keys(tables.bodyMeasure.fields).filter((field) => field.endsWith("Mm") || field === "weightKg");
