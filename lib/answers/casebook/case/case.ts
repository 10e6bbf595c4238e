import type { HealingStatus, PersonRow, ScoreRow, SegmentRow } from "@/lib/codebook";
import { courseOf, healingStatus, indexDefinition, readIndex, type SegmentCase } from "@/lib/outcomes";
import type { Join, Registry } from "@/lib/registry";
import { dataTo } from "../../frames/data-to";
import { stateAsOf } from "../../question/state";
import { firstOf } from "../keys";
import { surgeonNames } from "../surgeons";
import { type CaseBody, caseBodyOf } from "./body";
import { type CaseCorrection, caseCorrectionsOf } from "./corrections";
import { type CaseCourse, caseCourseOf } from "./course";
import { type Held, heldOf } from "./days";
import { type CaseEvent, caseEventOf, contractOf } from "./events";
import { type Beside, type CaseBatch, historyOf } from "./history";
import { type Phase, phasesOf } from "./phases";
import { type CaseRows, personCaseOf, rowsByTable, segmentCaseOf, type With } from "./rows-of-case";
import { firstSurgery, zeroFor } from "./zero";

export type CaseVisit = {
  readonly visit: number;
  readonly day: number;
  readonly cortices: number | null;
  readonly recorded: readonly Held[];
};
export type CaseSegment = {
  readonly segment: number;
  readonly bone: SegmentRow["bone"];
  readonly side: SegmentRow["side"];
  readonly surgeryYear: number;
  /** Days from the person's first operation; `null` where the person's days came without dates. */
  readonly daysAfterFirst: number | null;
  readonly status: HealingStatus;
  /** Days from surgery: as recorded, or as the visits say and then marked derived. */
  readonly healing: {
    readonly consolidation: number | null;
    readonly consolidationDerived: boolean;
    readonly distractionEnd: number | null;
    readonly distractionEndDerived: boolean;
    readonly lastFilm: number | null;
    readonly lastSeen: number | null;
  };
  readonly surgeryToConsolidationDaysPerCm: number | null;
  readonly phases: readonly Phase[];
  readonly course: CaseCourse;
  readonly visits: readonly CaseVisit[];
  readonly events: readonly CaseEvent[];
  readonly eventsLookedFor: NonNullable<SegmentRow["eventsLookedFor"]>;
  readonly contract: { readonly withTime: string; readonly withoutTime: string } | null;
  readonly recorded: readonly Held[];
};
export type CaseAnswer = {
  readonly case: number;
  readonly batch: number;
  readonly newestBatch: number;
  readonly dataTo: string | null;
  readonly line: PersonRow["line"];
  readonly recorded: readonly Held[];
  readonly segments: readonly CaseSegment[];
  readonly body: CaseBody;
  readonly scores: readonly { readonly score: number; readonly code: string; readonly day: number | null; readonly value: number }[];
  readonly events: readonly CaseEvent[];
  readonly corrections: readonly CaseCorrection[];
  /** Numbers of the cases that were joined to this one. */
  readonly joined: readonly number[];
  readonly history: readonly CaseBatch[];
};

const healingIndex = indexDefinition("surgery-to-consolidation");

/**
 * What is held of a case, and how it came to be. Every day is a number of days from a surgery: a segment's own, or, of what belongs to the
 * person, the first. `null` when there is no such case as of the batch.
 * @throws RangeError when there is no such batch
 */
export async function caseOf(registry: Registry, number: number, { asOf }: { readonly asOf?: number } = {}): Promise<CaseAnswer | null> {
  const state = await stateAsOf(registry, asOf);
  const rows = rowsByTable(await registry.rowsOf(number, state.batch));
  if (!rows) return null;
  const versions = await registry.versionsOf(number, state.batch);
  const surgeon = surgeonNames(await registry.frameAsOf(state, "segment", ["surgeon"]));
  const segments = rows.segments.map((segment) => segmentCaseOf(rows, segment));
  const zero = firstSurgery(rows);
  const corrections = caseCorrectionsOf(await registry.corrections(state.batch), rows, zero);
  const joins = joinsInto(await registry.joins(state.batch), number);
  return {
    case: number,
    batch: state.batch,
    newestBatch: (await registry.state()).batch,
    dataTo: await dataTo(registry, state),
    line: rows.person.row.line,
    recorded: heldOf("person", rows.person.row, zero, surgeon),
    segments: rows.segments.map((segment, i) => caseSegmentOf(rows, segment, segments[i] as SegmentCase, { zero, surgeon })),
    body: caseBodyOf(rows, personCaseOf(rows, segments), zero),
    scores: rows.scores.map((score) => scoreOf(score, zero)),
    events: rows.events.filter(({ segment }) => segment === null).map((event) => caseEventOf(event, null, zero)),
    corrections,
    joined: joins.map((join) => join.case),
    history: historyOf(versions, await registry.batches(), {
      asOf: state.batch,
      zeroOf: (version) => zeroFor(version.row, zero),
      surgeon,
      beside: { corrections, joins },
    }),
  };
}

/** Cases that were joined to one, at first or second hand. */
function joinsInto(joins: readonly Join[], number: number): Beside["joins"] {
  return joins
    .filter(({ person }) => firstOf(joins, person.entity) === number)
    .map(({ person, since }) => ({ since, case: person.entity }));
}

type Counting = { readonly zero: number | null; readonly surgeon: (name: string) => string | null };

function caseSegmentOf(rows: CaseRows, { entity, row }: With<SegmentRow>, segment: SegmentCase, { zero, surgeon }: Counting): CaseSegment {
  const course = courseOf(segment);
  const own = row.surgeryDay;
  const after = (day: number | null) => (day === null ? null : day - own);
  const reading = readIndex(segment, healingIndex, { boneNamed: true });
  const events = rows.events.filter((event) => event.segment === entity);
  return {
    segment: entity,
    bone: row.bone,
    side: row.side,
    surgeryYear: row.surgeryYear,
    daysAfterFirst: zero === null || rows.person.row.line === "undated" ? null : own - zero,
    status: healingStatus(segment, course),
    healing: {
      consolidation: after(course.consolidationDay),
      consolidationDerived: course.derived.consolidation,
      distractionEnd: after(course.distractionEndDay),
      distractionEndDerived: course.derived.distractionEnd,
      lastFilm: after(course.lastFilmDay),
      lastSeen: after(row.lastFollowUpDay),
    },
    surgeryToConsolidationDaysPerCm: reading.reading === "measured" ? reading.value : null,
    phases: phasesOf(segment, course),
    course: caseCourseOf(segment, course, row.prescribedStepsPerDay),
    visits: rows.visits
      .filter((visit) => visit.segment === entity)
      .map(({ entity: number, row: visit }) => ({
        visit: number,
        day: visit.visitDay - own,
        cortices: visit.cortices,
        recorded: heldOf("visit", visit, own, surgeon).filter(({ field }) => field !== "visitDay"),
      })),
    events: events.map((event) => caseEventOf(event, segment, own)),
    eventsLookedFor: row.eventsLookedFor ?? "not-collected",
    contract: contractOf(segment, events),
    recorded: heldOf("segment", row, own, surgeon),
  };
}

function scoreOf({ entity, row }: With<ScoreRow>, zero: number | null): CaseAnswer["scores"][number] {
  return { score: entity, code: row.scoreCode, day: zero === null ? null : row.scoreDay - zero, value: row.scoreValue };
}
