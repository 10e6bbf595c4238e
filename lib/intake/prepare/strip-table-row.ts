import { isDay } from "../cells/cell-read";
import { type SheetKind, tableOfKind } from "../match/sheet-kind";
import { dayOnLine } from "../strip";
import { type AnyRow, blankRow } from "./blank-row";
import type { Draft, Part } from "./draft";
import type { Keyed } from "./keyed-drafts";
import type { SegmentIndex } from "./segment-index";
import { placed } from "./strip-segment";
import { missing, type StrippedDraft, type StrippedPart, say } from "./stripped-draft";
import { holdsDate } from "./time-of-surgery";

type TableKind = Exclude<SheetKind, "one-sheet">;

const required: Readonly<Record<TableKind, readonly string[]>> = {
  persons: [],
  "body-measures": ["bodyDay"],
  visits: ["visitDay"],
  events: ["eventType"],
  scores: ["scoreCode", "scoreDay", "scoreValue"],
};

/** Strips a row of a sheet that holds one table. Its segment is found among those of these files and those held. */
export function stripTableRow(draft: Draft, keyed: Keyed | null, kind: TableKind, index: SegmentIndex): StrippedDraft {
  const stripped: StrippedDraft = { draft, keyed, line: null, parts: [], facts: draft.facts };
  if (!keyed) missing(stripped, "localId");
  const table = tableOfKind[kind];
  const part = draft.parts.find((each) => each.table === table) ?? { table, moment: null, number: null, values: {} };
  if (draft.noEvents && kind === "events") return stripped;
  for (const field of required[kind]) if (part.values[field] === undefined) missing(stripped, field);
  const name = keyed && nameOf(stripped, part, keyed, { kind, index });
  if (!keyed || !name) return stripped;
  stripped.line = holdsDate(part) ? "dated" : index.lineOf(keyed.person);
  const surgeryDay = typeof name.surgeryDay === "number" ? name.surgeryDay : null;
  const { episode: _, surgeryDay: __, ...values } = placed(part, surgeryDay, keyed);
  for (const field of required[kind]) if (values[field] === null) missing(stripped, field, "a date, or a surgery to count from");
  stripped.parts.push(...partsOf(stripped, keyed, kind, { ...values, ...name }));
  return stripped;
}

function partsOf({ line }: StrippedDraft, { person, unit }: Keyed, kind: TableKind, values: AnyRow): StrippedPart[] {
  const own = kind === "persons" ? values : {};
  const personRow = Object.assign(blankRow("person"), own, { person, unit, line: line ?? "dated" });
  const first: StrippedPart = { table: "person", nth: null, row: personRow };
  if (kind === "persons") return [first];
  const table = tableOfKind[kind];
  return [first, { table, nth: null, row: Object.assign(blankRow(table), values, howMade(kind), { person }) }];
}

function nameOf(
  stripped: StrippedDraft,
  part: Part,
  keyed: Keyed,
  { kind, index }: { kind: TableKind; index: SegmentIndex },
): AnyRow | null {
  return kind === "visits" || kind === "events" ? nameSegment(stripped, part, keyed, index) : {};
}

function howMade(kind: TableKind): AnyRow {
  return kind === "body-measures" ? { bodyDayFrom: "recorded" } : {};
}

/** The key of the segment that a visit or event names; all `null` for an event of the person; `null` when it can't be told. */
function nameSegment(stripped: StrippedDraft, { values }: Part, keyed: Keyed, index: SegmentIndex): AnyRow | null {
  const { bone, side, surgeryDay, episode } = values;
  if (bone === undefined && side === undefined && stripped.draft.parts[0]?.table === "event")
    return { bone: null, side: null, surgeryDay: null };
  if (typeof bone !== "string" || typeof side !== "string") {
    missing(stripped, typeof bone === "string" ? "side" : "bone");
    return null;
  }
  if (isDay(surgeryDay) && "on" in surgeryDay) return { bone, side, surgeryDay: dayOnLine(surgeryDay.on, keyed.shiftDays) };
  const known = index.segmentsOf(keyed.person, bone, side).filter((segment) => episode === undefined || (segment.episode ?? 1) === episode);
  const only = known[0];
  if (known.length === 1 && only) return { bone, side, surgeryDay: only.surgeryDay };
  say(stripped, {
    code: "which-segment",
    found: known.length === 0 ? "no such segment known" : `${known.length} such segments known`,
    field: "surgeryDay",
  });
  return null;
}
