import { canonicalWhere, type Where } from "@/lib/cohorts";
import { followUpCompleteness, followUpWindows, type WindowStatus, windowStatus } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { reverseKaplanMeier } from "@/lib/stats";
import { type Case, casesOf } from "../frames/cases";
import { dataTo } from "../frames/data-to";
import { fieldsOfSplit, type Group, splitBy } from "../healing/groups";
import { keepQuestion } from "../question/keep";
import { type Question, stampOf } from "../question/stamp";
import { stateAsOf } from "../question/state";
import { version } from "../question/version";
import { calendarFields, closingDate, middleOfSurgeryQuarter, seenDays } from "./calendar";

export type FollowUpGroup = {
  readonly key: Group["key"];
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  readonly windows: readonly { readonly id: string; readonly label: string; readonly counts: Readonly<Record<WindowStatus, number>> }[];
  /** Observed over potential person-time from each person's first operation; `null` when nobody could have been followed. */
  readonly completeness: { readonly observed: number; readonly potential: number; readonly share: number } | null;
  /** Median follow-up of segments by reverse Kaplan–Meier, days. */
  readonly median: { readonly estimate: number | null; readonly lower: number | null; readonly upper: number | null } | null;
};
export type FollowUpAnswer = {
  readonly measure: "follow-up-completeness";
  readonly unit: "share";
  readonly by: readonly string[];
  readonly groups: readonly FollowUpGroup[];
  readonly batch: number;
  readonly state: State;
  readonly stamp: string;
  readonly dataTo: string | null;
  readonly definition: { readonly title: string; readonly sentence: string };
  /** What the calendar of quarters can't tell. */
  readonly caution: string;
};

const definition = {
  title: "Follow-up",
  sentence: "seen: anything recorded of the segment within the window, from surgery; due: the window has closed and nothing was",
};
const caution =
  "Potential follow-up runs from the middle of the quarter of surgery to the latest day on which anyone was seen; it can err by 46 days.";

/** Seen, due, not yet due, dead and lost at each window, and how complete follow-up is. */
export async function followUp(
  registry: Registry,
  { where = {}, by = [], asOf }: { readonly where?: Where; readonly by?: readonly string[]; readonly asOf?: number },
): Promise<FollowUpAnswer> {
  const state = await stateAsOf(registry, asOf);
  const closing = closingDate(await casesOf(registry, state, {}, calendarFields));
  const cases = await casesOf(registry, state, where, [...calendarFields, "followUpStatus", "followUpStatusDay", ...fieldsOfSplit(by)]);
  const question: Question = {
    cohort: JSON.parse(canonicalWhere(where)),
    measure: "follow-up-completeness",
    by,
    method: "observed over potential person-time; median by reverse Kaplan–Meier",
    options: {},
    seed: null,
    version,
    state,
  };
  const stamp = stampOf(question);
  await keepQuestion(registry, stamp, question);
  const groups = splitBy(cases, by).map((group) => answerGroup(group, closing));
  const head = { batch: state.batch, state, stamp, dataTo: await dataTo(registry, state) };
  return { measure: "follow-up-completeness", unit: "share", by, groups, ...head, definition, caution };
}

type Followed = {
  readonly one: Case;
  readonly seenOn: readonly number[];
  readonly potentialDays: number;
  readonly diedOn: number | null;
  readonly lostOn: number | null;
};

function followed(one: Case, closing: number | null): Followed | null {
  const middle = middleOfSurgeryQuarter(one);
  if (middle === null || closing === null) return null;
  const status = one.look("followUpStatus");
  const day = one.look("followUpStatusDay");
  const seenOn = seenDays(one);
  const on = typeof day === "number" ? day - one.segment.surgeryDay : Math.max(0, ...seenOn);
  const gone = status === "lost" || status === "transferred" || status === "withdrew";
  return { one, seenOn, potentialDays: Math.max(0, closing - middle), diedOn: one.segment.died ? on : null, lostOn: gone ? on : null };
}

function answerGroup(group: Group, closing: number | null): FollowUpGroup {
  const rows = group.cases.map((one) => followed(one, closing)).filter((row) => row !== null);
  return {
    key: group.key,
    label: group.label,
    patients: new Set(group.cases.map(({ segment }) => segment.person)).size,
    segments: group.cases.length,
    windows: followUpWindows.map((window) => ({ id: window.id, label: window.label, counts: countsAt(rows, window) })),
    completeness: completenessOf(rows),
    median: medianFollowUp(rows),
  };
}

function countsAt(rows: readonly Followed[], window: { readonly middle: number; readonly around: number }): Record<WindowStatus, number> {
  const counts: Record<WindowStatus, number> = { seen: 0, due: 0, "not-yet-due": 0, dead: 0, lost: 0 };
  for (const row of rows) counts[windowStatus(row, window)]++;
  return counts;
}

/** Each person from its first operation to its last contact of any segment. */
function completenessOf(rows: readonly Followed[]): FollowUpGroup["completeness"] {
  const persons = new Map<number, { first: number; seen: number; potential: number; died: boolean }>();
  for (const { one, seenOn, potentialDays } of rows) {
    const { person, surgeryDay, died } = one.segment;
    const last = surgeryDay + Math.max(0, ...seenOn);
    const held = persons.get(person);
    if (!held) persons.set(person, { first: surgeryDay, seen: last, potential: potentialDays, died });
    else {
      held.seen = Math.max(held.seen, last);
      held.potential = Math.max(held.potential, potentialDays);
      held.first = Math.min(held.first, surgeryDay);
    }
  }
  const times = [...persons.values()].map(({ first, seen, potential, died }) => ({ observed: seen - first, potential, event: died }));
  return times.some(({ potential }) => potential > 0) ? followUpCompleteness(times) : null;
}

function medianFollowUp(rows: readonly Followed[]): FollowUpGroup["median"] {
  const times = rows.map(({ seenOn }) => Math.max(0.5, ...seenOn));
  if (times.length === 0) return null;
  const { estimate, lower, upper } = reverseKaplanMeier({
    times,
    event: rows.map(({ diedOn }) => Number(diedOn !== null)),
    patient: rows.map(({ one }) => one.segment.person),
  });
  return { estimate, lower, upper };
}
