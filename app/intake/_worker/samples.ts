import { type Field, fieldsOf, fileOnlyFields, labelOfCode, type TableName } from "@/lib/codebook";
import type { ColumnMatch, Prepared, Sample, Target } from "@/lib/intake";
import type { CellShown, SampleShown } from "../_talk/view";

type Part = Sample["after"][number];
const namedBy: Partial<Record<TableName, string>> = { event: "eventType", visit: "visitDay", score: "scoreCode" };

/** Sample rows, each cell with what becomes of it. */
export function samplesShown({ samples, matches }: Pick<Prepared, "samples" | "matches">): readonly SampleShown[] {
  return samples.flatMap((sample) => {
    const match = matches.find(({ file }) => file === sample.file)?.match;
    if (!match) return [];
    const cells = sample.before.map(({ header, cell }, i) =>
      cellShown(header, cell, match.columns[i]?.target ?? null, { sample, columns: match.columns }),
    );
    return [{ file: sample.file, row: sample.row, cells }];
  });
}

type Around = { readonly sample: Sample; readonly columns: readonly ColumnMatch[] };

function cellShown(header: string, cell: string, target: Target | null, around: Around): CellShown {
  if (cell.trim() === "") return { header, cell: "", fate: "blank", becomes: null };
  if (!target) return { header, cell, fate: "out", becomes: null };
  const { becomes, turned } = whatBecomes(target, around);
  if (becomes === null) return { header, cell, fate: "out", becomes };
  return { header, cell, fate: turned ? "turned" : "kept", becomes };
}

function whatBecomes(target: Target, around: Around): { becomes: string | null; turned: boolean } {
  if (target.table === "file") return { becomes: fromFileOnly(target, around.sample), turned: target.field in fileOnlyFields };
  const value = partOf(target, around)?.values[target.field];
  if (value === undefined && saysNoEvent(target, around.sample)) return { becomes: "no event, and events were looked for", turned: false };
  const field = fieldsOf(target.table).find(([id]) => id === target.field)?.[1];
  if (value === undefined || !field) return { becomes: null, turned: false };
  if (target.field !== "surgeryDay") return { becomes: valueWords(field, value), turned: field.kind === "day" };
  return { becomes: [valueWords(field, value), ...timeWords(around.sample)].join("; "), turned: true };
}

/** What a sheet of segments keeps of the calendar: year and quarter. */
function timeWords({ after }: Sample): readonly string[] {
  const { surgeryYear, surgeryQuarter } = after.find(({ table }) => table === "segment")?.values ?? {};
  if (surgeryYear === undefined) return [];
  return [surgeryQuarter === undefined ? `${surgeryYear}` : `${surgeryYear}, quarter ${surgeryQuarter}`];
}

function saysNoEvent({ table, field }: Target, { after }: Sample): boolean {
  const lookedFor = after.find((part) => part.table === "segment")?.values.eventsLookedFor;
  return table === "event" && field === "eventType" && lookedFor === "fully" && !after.some((part) => part.table === "event");
}

/** What the columns that are never sent give. */
function fromFileOnly({ field }: Target, { after }: Sample): string | null {
  const held = (table: TableName, id: string) => after.find((part) => part.table === table)?.values[id];
  if (field === "localId") return `pseudonym ${held("person", "person") ?? held("segment", "person") ?? ""}`;
  if (field === "surgeonName") return held("segment", "surgeon") === undefined ? null : `code ${held("segment", "surgeon")}`;
  if (field === "dateOfBirth")
    return held("segment", "ageAtSurgeryYears") === undefined ? null : `age ${held("segment", "ageAtSurgeryYears")}`;
  if (field !== "releases") return "length of this side’s bone";
  const released = Object.entries(after.find(({ table }) => table === "segment")?.values ?? {}).filter(
    ([id, value]) => id.startsWith("release") && value === true,
  );
  return released.length === 0 ? null : released.map(([id]) => labelIn("segment", id)).join(", ");
}

function partOf(target: Target, { sample, columns }: Around): Part | undefined {
  const parts = sample.after.filter(({ table }) => table === target.table);
  if (target.moment !== null) return parts.find(({ values }) => values.occasion === target.moment);
  if (target.number === null) return parts[0];
  return parts[numbersFilled(target, { sample, columns }).indexOf(target.number)];
}

/** Numbers of a row's events, visits or scores that name one, in their order: the order of its parts. */
function numbersFilled({ table }: Target, { sample, columns }: Around): readonly number[] {
  const names = columns.filter(({ target }) => target?.table === table && target.field === namedBy[table as TableName]);
  const filled = names.filter(({ index }) => (sample.before[index]?.cell ?? "").trim() !== "");
  return filled.map(({ target }) => target?.number ?? 0).sort((a, b) => a - b);
}

function valueWords(field: Field, value: string | number | boolean): string {
  if (field.kind === "day") return `day ${value} on this person’s own line`;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (field.kind === "code") return labelOfCode(String(value)).toLowerCase();
  if (field.kind !== "number") return String(value);
  return field.unit === "deg" ? `${value}°` : `${value} ${field.unit}`;
}

function labelIn(table: TableName, id: string): string {
  return (fieldsOf(table).find(([field]) => field === id)?.[1].label ?? id).toLowerCase();
}
