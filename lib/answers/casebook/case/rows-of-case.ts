import type { BodyMeasureRow, EventRow, PersonRow, ScoreRow, SegmentRow, VisitRow } from "@/lib/codebook";
import type { PersonCase, SegmentCase } from "@/lib/outcomes";
import type { CaseRow } from "@/lib/registry";

export type With<Row> = { readonly entity: number; readonly segment: number | null; readonly row: Row };

/** The rows of a person that held as of a batch, by table. */
export type CaseRows = {
  readonly person: With<PersonRow>;
  readonly segments: readonly With<SegmentRow>[];
  readonly visits: readonly With<VisitRow>[];
  readonly events: readonly With<EventRow>[];
  readonly bodyMeasures: readonly With<BodyMeasureRow>[];
  readonly scores: readonly With<ScoreRow>[];
};

/** @returns `null` when the person isn't among them */
export function rowsByTable(held: readonly CaseRow[]): CaseRows | null {
  const of = <T extends CaseRow["table"]>(table: T) =>
    held.flatMap((one) =>
      // the table tells the row's type
      one.table === table
        ? [{ entity: one.entity, segment: one.segmentEntity, row: one.row as Extract<CaseRow, { table: T }>["row"] }]
        : [],
    );
  const [person] = of("person");
  if (!person) return null;
  return {
    person,
    segments: of("segment").sort((a, b) => a.row.surgeryDay - b.row.surgeryDay || a.entity - b.entity),
    visits: of("visit").sort((a, b) => a.row.visitDay - b.row.visitDay),
    events: of("event").sort((a, b) => (a.row.onsetDay ?? Number.MAX_SAFE_INTEGER) - (b.row.onsetDay ?? Number.MAX_SAFE_INTEGER)),
    bodyMeasures: of("bodyMeasure").sort((a, b) => a.row.bodyDay - b.row.bodyDay),
    scores: of("score").sort((a, b) => a.row.scoreDay - b.row.scoreDay),
  };
}

/** The segment as measures know it: with the rescue that its events tell, its person's death, and its visits. */
export function segmentCaseOf(rows: CaseRows, { entity, row }: With<SegmentRow>): SegmentCase {
  return {
    ...row,
    segment: entity,
    person: rows.person.entity,
    rescueDay: row.rescueDay ?? rescueOf(rows, entity),
    died:
      rows.person.row.followUpStatus === "died" ||
      rows.events.some(({ row: event }) => event.death === true || event.eventType === "death-any-cause"),
    visits: rows.visits.filter(({ segment }) => segment === entity).map(({ row: visit }) => visit),
  };
}

/** First unplanned operation for healing of the regenerate. */
function rescueOf({ events }: CaseRows, segment: number): number | null {
  const days = events.flatMap(({ segment: of, row }) =>
    of === segment && row.purpose === "regenerate-healing" && row.planned !== true && row.onsetDay !== null ? [row.onsetDay] : [],
  );
  return days.length === 0 ? null : Math.min(...days);
}

/** The person as measures know it, with all of its segments. */
export function personCaseOf(rows: CaseRows, segments: readonly SegmentCase[]): PersonCase {
  const { row, entity } = rows.person;
  return {
    ...row,
    person: entity,
    ageAtSurgeryYears: rows.segments[0]?.row.ageAtSurgeryYears ?? null,
    segments,
    bodyMeasures: rows.bodyMeasures.map(({ row: measure }) => measure),
    scores: rows.scores.map(({ row: score }) => score),
  };
}
