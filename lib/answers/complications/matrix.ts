import type { Where } from "@/lib/cohorts";
import { type EndRule, neededOperation, originOfEvent, phaseOf, schemeOf, treatmentEnd } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { casesOf } from "../frames/cases";
import { fieldsOfSplit, type GroupKey, splitBy } from "../healing/groups";
import type { Row } from "../measures/measured";
import { summariseShare } from "../measures/numbers";
import { type Head, openQuestion } from "../question/open";
import type { Note, Share } from "../types";
import { type Agreement, agreementOf } from "./agreement";
import { type CountedSegment, type Counting, countEvents } from "./counted";
import { eventsOf } from "./events";
import { type Implants, implantsOf } from "./implants";
import { schemeNotes } from "./scheme-list";

export type MatrixRow = {
  readonly type: string;
  readonly origin: string;
  /** Events of the type, by class; in the order of the scheme's classes. */
  readonly byClass: Readonly<Record<string, number>>;
  /** Events of the type, by the phase of treatment in which they began. */
  readonly byPhase: Readonly<Record<string, number>>;
  readonly events: number;
  /** Of the events, those that needed an unplanned operation, and those recorded as resolved within 12 months of surgery. */
  readonly operations: number;
  readonly resolvedWithin12Months: number;
  /** Segments with at least one such event, of those whose events were looked for. */
  readonly segments: Share;
};
export type MatrixGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly segments: number;
  readonly lookedFor: number;
  readonly notLookedFor: number;
  readonly rows: readonly MatrixRow[];
  /** The surgeon's class beside the derived one; `null` where none was recorded. */
  readonly agreement: Agreement | null;
  readonly implants: Implants;
};
export type MatrixAnswer = Head & {
  readonly measure: "complication-matrix";
  readonly scheme: {
    readonly id: string;
    readonly title: string;
    readonly source: string;
    readonly classes: readonly string[];
    readonly endRule: EndRule;
  };
  readonly groups: readonly MatrixGroup[];
  readonly notes: readonly Note[];
  /** Events whose class changes under each other end-of-treatment rule. */
  readonly changesUnder: Readonly<Record<string, number>>;
};

const otherRules: readonly EndRule[] = ["implant-removal", "twelve-months"];

/** Complications by type and class, each with the share of segments that had one; and how the end-of-treatment rule changes the classes. */
export async function complicationMatrix(
  registry: Registry,
  asked: {
    readonly by?: readonly string[];
    readonly where?: Where;
    readonly scheme?: string;
    readonly endRule?: EndRule;
    readonly withoutPinSites?: boolean;
    readonly asOf?: number;
  },
): Promise<MatrixAnswer> {
  const scheme = schemeOf(asked.scheme ?? "severity");
  const endRule = asked.endRule ?? "healed-and-bearing";
  const counting: Counting = { scheme, endRule, withoutPinSites: asked.withoutPinSites ?? false, operationsOnly: false };
  const head = await openQuestion(registry, {
    ...asked,
    measure: "complication-matrix",
    method: "counts; share of segments with Wilson’s interval on the effective number of cases",
    options: { scheme: scheme.id, endRule, withoutPinSites: counting.withoutPinSites },
  });
  const cases = await casesOf(registry, head.state, asked.where ?? {}, fieldsOfSplit(head.by));
  const events = await eventsOf(registry, head.state);
  const counted = splitBy(cases, head.by).map((group) => {
    const procedures = group.cases.filter(({ segment }) => segment.procedure !== "transport");
    return { group, ...countEvents(procedures, events, counting) };
  });
  return {
    ...head,
    measure: "complication-matrix",
    scheme: { id: scheme.id, title: scheme.title, source: scheme.source, classes: scheme.classes, endRule },
    groups: counted.map(({ group, segments, notLookedFor }) => ({
      key: group.key,
      label: group.label,
      segments: group.cases.length,
      lookedFor: segments.length,
      notLookedFor,
      rows: rowsOf(segments, counting),
      agreement: agreementOf(segments, counting),
      implants: implantsOf(group.cases),
    })),
    notes: schemeNotes(scheme),
    changesUnder: Object.fromEntries(
      otherRules.map((rule) => [
        rule,
        changes(
          counted.flatMap(({ segments }) => segments),
          counting,
          rule,
        ),
      ]),
    ),
  };
}

function rowsOf(segments: readonly CountedSegment[], counting: Counting): readonly MatrixRow[] {
  const types = new Map<string, Tally>();
  for (const counted of segments) {
    for (const facts of counted.events) {
      const row = types.get(facts.eventType) ?? emptyTally(originOfEvent(facts));
      types.set(facts.eventType, row);
      tally(row, counted, facts, counting);
    }
  }
  return [...types]
    .map(([type, { having, ...row }]) => ({ type, ...row, segments: shareWith(segments, having) }))
    .sort((a, b) => b.events - a.events || (a.type < b.type ? -1 : 1));
}

type Tally = { -readonly [K in Exclude<keyof MatrixRow, "type" | "segments" | "byClass" | "byPhase">]: MatrixRow[K] } & {
  readonly byClass: Record<string, number>;
  readonly byPhase: Record<string, number>;
  readonly having: Set<number>;
};

function emptyTally(origin: string): Tally {
  return { origin, byClass: {}, byPhase: {}, events: 0, operations: 0, resolvedWithin12Months: 0, having: new Set() };
}

const yearDays = 365;

function tally(row: Tally, counted: CountedSegment, facts: CountedSegment["events"][number], counting: Counting): void {
  const { segment } = counted.one;
  const name = classOf(counted, facts, counting, counting.endRule) ?? "none";
  const phase = phaseOf(facts, segment, treatmentEnd(segment, counting.endRule)) ?? "not recorded";
  row.byClass[name] = (row.byClass[name] ?? 0) + 1;
  row.byPhase[phase] = (row.byPhase[phase] ?? 0) + 1;
  row.events++;
  row.operations += Number(neededOperation(facts));
  row.resolvedWithin12Months += Number(facts.resolvedDay !== null && facts.resolvedDay - segment.surgeryDay <= yearDays);
  row.having.add(segment.segment);
}

function shareWith(segments: readonly CountedSegment[], having: ReadonlySet<number>): Share {
  const rows: Row[] = segments.map(({ one }) => ({
    person: one.segment.person,
    segment: one.segment.segment,
    value: Number(having.has(one.segment.segment)),
  }));
  return summariseShare(rows).share;
}

function classOf({ one }: CountedSegment, facts: CountedSegment["events"][number], { scheme }: Counting, rule: EndRule): string | null {
  const end = treatmentEnd(one.segment, rule);
  return scheme.classify({ ...facts, phase: phaseOf(facts, one.segment, end) }, end);
}

function changes(segments: readonly CountedSegment[], counting: Counting, rule: EndRule): number {
  const changed = (counted: CountedSegment) =>
    counted.events.filter((facts) => classOf(counted, facts, counting, rule) !== classOf(counted, facts, counting, counting.endRule));
  return segments.reduce((sum, counted) => sum + changed(counted).length, 0);
}
