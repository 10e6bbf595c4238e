import { ask, type MeasureAnswer, type MeasureGroup } from "@/lib/answers";
import {
  type Column,
  count,
  counted,
  cumulativeIncidenceFigure,
  decimals,
  estimate,
  percentText,
  reasonsText,
  tableFrom,
  words,
} from "@/lib/charts";
import { drawable } from "../told/drawable";
import { askedOf, type PlaceQuestion, type Registry } from "../told/question";
import type { Told, ToldTable } from "../told/told";
import { byGroup } from "../words/by-group";
import { commandWords } from "../words/command-words";
import { leftOutOf } from "../words/left-out";
import { nobodyIn } from "../words/nobody";
import { notesOf } from "../words/notes";

export type IncidenceQuestion = PlaceQuestion & {
  readonly measure: "complication-incidence" | "complication-return-to-theatre";
  readonly withoutPinSites: boolean;
};

/** The share of segments with a first event by day, with what competes. */
export async function tellIncidence(registry: Registry, question: IncidenceQuestion): Promise<Told> {
  const { measure, withoutPinSites } = question;
  const asked = { ...askedOf(question), measure };
  const [counting, without] = await Promise.all(
    [false, true].map((left) => ask(registry, { ...asked, withoutPinSites: left }) as Promise<MeasureAnswer>),
  );
  if (!counting || !without) throw new Error("tellIncidence requires two answers");
  const answer = withoutPinSites ? without : counting;
  return {
    title: answer.definition.title,
    sentences: incidenceSentences(answer),
    cautions: withoutPinSites ? ["Pin-site infections are left out."] : [],
    figures: [drawable(cumulativeIncidenceFigure, { ...answer, competing: "death" })],
    tables: [pinSitesTable(counting, without)],
    definition: answer.definition.sentence,
    method: answer.method,
    leftOut: leftOutOf(answer.groups),
    notes: notesOf(answer.notes, answer.groups),
    references: [
      { of: "the curves", stamp: answer.stamp },
      {
        of: withoutPinSites ? "with pin-site infections counted" : "with pin-site infections left out",
        stamp: (withoutPinSites ? counting : without).stamp,
      },
    ],
    commands: [
      commandWords(`measure ${measure}`, question, { "without-pin-sites": withoutPinSites ? "" : null }),
      commandWords(`measure ${measure}`, question, { "without-pin-sites": withoutPinSites ? null : "" }),
    ],
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

/** By a year: with pin-site infections, which only frames have, and without. */
function pinSitesTable({ groups }: MeasureAnswer, without: MeasureAnswer): ToldTable {
  const columns: Column<MeasureGroup>[] = [
    words("group", "Group", ({ label }) => label),
    count("segments", "Segments", ({ segments }) => segments),
    count("n", "On the curve", ({ n }) => n),
    count("by", "By day", (group) => shareBy(group)?.day),
    ...estimate<MeasureGroup>("counted", "Pin-site infections counted", percent, shareBy),
    ...estimate<MeasureGroup>("left-out", "Pin-site infections left out", percent, ({ label }) => {
      const own = without.groups.find((group) => group.label === label);
      return own ? shareBy(own) : null;
    }),
  ];
  return { caption: "By a year, with pin-site infections and without", table: tableFrom(columns, groups) };
}

const percent = { name: "%", perRecord: 100, digits: 0, valueDigits: 0 };
const yearDays = 365;
const leastAtRisk = 5;

/** The share by a year, or by the last day on which enough are still followed. */
function shareBy({ curve = [] }: MeasureGroup) {
  const few = curve.findIndex(({ atRisk }) => atRisk < leastAtRisk);
  const shown = few === -1 ? curve : curve.slice(0, few);
  const last = shown.at(-1);
  if (!last) return null;
  const day = Math.min(yearDays, last.day);
  const point = shown.filter((one) => one.day <= day).at(-1);
  return { day, estimate: point?.estimate ?? 0, lower: point?.lower ?? null, upper: point?.upper ?? null };
}

export function incidenceSentences({ groups }: MeasureAnswer): readonly string[] {
  const followed = groups.filter(({ n }) => n > 0);
  if (followed.length === 0)
    return [nobodyIn(groups) ? "No segment in this cohort." : "No segment of this cohort had its events looked for and was followed."];
  const lead = byGroup(followed, {
    text: (group) => pointText(group),
    rank: (group) => {
      const point = shareBy(group);
      // shares by other days are no ends of a range
      return point === null || point.day < yearDays || point.lower === null ? null : point.estimate;
    },
    lowest: "the lowest share by a year",
    highest: "the highest",
  });
  const out = groups.reduce<Record<string, number>>((sum, { excluded }) => {
    for (const [reason, n] of Object.entries(excluded)) sum[reason] = (sum[reason] ?? 0) + n;
    return sum;
  }, {});
  const text = reasonsText({ excluded: out });
  return [`With the event: ${lead}.`, ...(text === "" ? [] : [`Not on a curve: ${text}.`])];
}

function pointText(group: MeasureGroup): string {
  const point = shareBy(group);
  if (!point) return `too few followed for a curve (${counted(group.n, "segment")})`;
  const interval =
    point.lower === null || point.upper === null ? "no interval" : `95 % CI ${percentText(point.lower)} to ${percentText(point.upper)}`;
  return `${percentText(point.estimate)} % by ${decimals(point.day, 0)} days (${interval}; ${counted(group.n, "segment")})`;
}
