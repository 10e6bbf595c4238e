import { type Between, caseMix, type FollowUpAnswer, type FollowUpGroup, followUp } from "@/lib/answers";
import {
  balanceFigure,
  type Column,
  count,
  counted,
  decimals,
  type FollowUpRecord,
  followUpFigure,
  grouped,
  noValue,
  percentText,
  tableFrom,
  words,
} from "@/lib/charts";
import { drawable } from "../told/drawable";
import { askedOf, type PlaceQuestion, type Registry } from "../told/question";
import type { Told, ToldTable } from "../told/told";
import { byGroup } from "../words/by-group";
import { balanceRecord } from "../words/case-mix-record";
import { upperFirst } from "../words/code-words";
import { commandWords } from "../words/command-words";
import { nobodyIn } from "../words/nobody";

/** Who was seen at each window, who was due, and how much of the time that could have been followed was. */
export async function tellFollowUp(registry: Registry, question: PlaceQuestion): Promise<Told> {
  const answer = await followUp(registry, askedOf(question));
  const mix = await caseMix(registry, { between: lostBesideOthers(question), ...(question.asOf === null ? {} : { asOf: question.asOf }) });
  const lost = mix.sides[0].segments > 0 && mix.sides[1].segments > 0;
  return {
    title: "Follow-up",
    sentences: [...followUpSentences(answer), answer.caution],
    cautions: [],
    figures: [drawable(followUpFigure, recordOf(answer)), ...(lost ? [drawable(balanceFigure, balanceRecord(mix))] : [])],
    tables: [completenessTable(answer)],
    definition: answer.definition.sentence,
    method: "observed over potential person-time (Clark, Altman, De Stavola 2002); median by reverse Kaplan–Meier, by patient",
    leftOut: [],
    notes: [],
    references: [{ of: "follow-up", stamp: answer.stamp }, ...(lost ? [{ of: "the lost beside the others", stamp: mix.stamp }] : [])],
    commands: [commandWords("follow-up", question)],
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

/** Who was lost, and whether they were like the others to begin with: those who weren't may have fared otherwise. */
function lostBesideOthers({ where }: PlaceQuestion): Between {
  const gone = { followUpStatus: ["lost", "transferred", "withdrew"] } as const;
  return {
    cohorts: [
      { name: "Lost, moved or withdrawn", where: { all: [where, gone] } },
      { name: "The others", where: { all: [where, { not: gone }] } },
    ],
  };
}

export function followUpSentences({ groups }: FollowUpAnswer): readonly string[] {
  const known = groups.filter(({ completeness }) => completeness !== null);
  if (known.length === 0) return [nobodyIn(groups) ? "No segment in this cohort." : "Nobody in this cohort could have been followed yet."];
  const complete = byGroup(known, {
    text: ({ completeness }) => `${percentText(completeness?.share ?? 0)} % of the time that could have been followed was`,
    rank: ({ completeness }) => completeness?.share ?? null,
    lowest: "the least complete",
    highest: "the most complete",
  });
  return [`${upperFirst(complete)}.`, ...(groups.length === 1 ? known.map(yearText) : [])];
}

function yearText({ windows }: FollowUpGroup): string {
  const year = windows.find(({ id }) => id === "12-months");
  if (!year) return "";
  const { seen, due, lost, dead } = year.counts;
  const [all, ...rest] = [seen + due + lost + dead, due, lost, dead].map(grouped);
  return `At 12 months, ${counted(seen, "segment was", "segments were")} seen of ${all} that could have been; ${rest[0]} due and not seen, ${rest[1]} lost, ${rest[2]} of patients who had died.`;
}

/** Segments whose surgery no quarter or year places stand in no window. */
function recordOf(answer: FollowUpAnswer): FollowUpRecord {
  const groups = answer.groups.map((group) => {
    const windows = group.windows.map(({ label, counts }) => ({
      label,
      seen: counts.seen,
      due: counts.due,
      lost: counts.lost,
      dead: counts.dead,
      notYetDue: counts["not-yet-due"],
    }));
    const [first] = group.windows;
    const n = first ? Object.values(first.counts).reduce((sum, one) => sum + one, 0) : 0;
    return { ...group, n, windows, excluded: { "not-recorded": group.segments - n } };
  });
  return { ...answer, groups };
}

const yearDays = 365.25;

function completenessTable({ groups }: FollowUpAnswer): ToldTable {
  const years = (days: number | undefined) => (days === undefined ? noValue : decimals(days / yearDays, 1));
  const columns: Column<FollowUpGroup>[] = [
    words("group", "Group", ({ label }) => label),
    count("patients", "Patients", ({ patients }) => patients),
    count("segments", "Segments", ({ segments }) => segments),
    { id: "observed", head: "Observed", unit: "person-years", align: "end", cell: ({ completeness }) => years(completeness?.observed) },
    { id: "potential", head: "Potential", unit: "person-years", align: "end", cell: ({ completeness }) => years(completeness?.potential) },
    {
      id: "share",
      head: "Complete",
      unit: "%",
      align: "end",
      cell: ({ completeness }) => (completeness ? percentText(completeness.share) : noValue),
    },
    {
      id: "median",
      head: "Median follow-up",
      unit: "days",
      align: "end",
      cell: ({ median }) => (median?.estimate == null ? noValue : decimals(median.estimate, 0)),
    },
  ];
  return { caption: "How complete follow-up is", table: tableFrom(columns, groups) };
}
