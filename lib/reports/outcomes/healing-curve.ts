import { type CurveGroup, type Films, type HealingCurveAnswer, healingCurve } from "@/lib/answers";
import {
  type CurveRecord,
  consolidationCurveFigure,
  counted,
  decimals,
  grouped,
  percentText,
  shownInterval,
  shownUnit,
} from "@/lib/charts";
import { drawable } from "../told/drawable";
import { askedOf, type FromLandmark, landmarkOf, type PlaceQuestion, type Registry } from "../told/question";
import type { Told } from "../told/told";
import { byGroup } from "../words/by-group";
import { upperFirst } from "../words/code-words";
import { commandWords } from "../words/command-words";
import { leftOutOf } from "../words/left-out";
import { nobodyIn } from "../words/nobody";
import { notesOf } from "../words/notes";
import { betweenFilmsTable, betweenFilmsText, curveTestText } from "./healing-curve-words";

export type CurveQuestion = PlaceQuestion &
  FromLandmark & {
    readonly rescue: "counted" | "competing";
    readonly films?: Films;
    readonly test?: boolean;
  };

/** The share healed by day, with the unhealed in. */
export async function tellHealingCurve(registry: Registry, question: CurveQuestion): Promise<Told> {
  const { rescue, films = "showed", test = false, landmark } = question;
  const answer = await healingCurve(registry, { ...askedOf(question), ...landmarkOf(question), rescue, films, test });
  const options = { rescue, landmark: landmark === undefined ? null : String(landmark) };
  const here = { ...options, films: films === "between" ? films : null, test: test ? "" : null };
  return {
    title: "Healing curve",
    sentences: [
      ...sentencesOf(answer),
      ...(films === "between" ? [betweenFilmsText(answer)] : []),
      ...(test ? [curveTestText(answer)] : []),
    ],
    cautions: [],
    figures: [drawable(consolidationCurveFigure, recordOf(answer))],
    tables: films === "between" ? [betweenFilmsTable(answer)] : [],
    definition: answer.definition.sentence,
    method: methodOf(answer),
    leftOut: leftOutOf(answer.groups),
    notes: notesOf([...answer.notes, ...(answer.test?.notes ?? [])], answer.groups),
    references: [{ of: "the curves", stamp: answer.stamp }],
    commands: [commandWords("outcome healing-curve", question, here), commandWords("measure time-to-consolidation", question, options)],
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

function recordOf(answer: HealingCurveAnswer): CurveRecord {
  const groups = answer.groups.map(({ healed, median, ...group }) => ({
    ...group,
    events: healed,
    medianDays: { estimate: median.days, lower: median.lower, upper: median.upper },
  }));
  return { ...answer, groups, ...(answer.landmarkDay === null ? {} : { clock: `from day ${answer.landmarkDay} after surgery` }) };
}

function methodOf({ method, groups, test }: HealingCurveAnswer): string {
  const between = groups.find(({ betweenFilms }) => betweenFilms !== null)?.betweenFilms;
  return [method, between?.method, test?.method].filter((one) => one !== undefined).join("; ");
}

const days = { ...shownUnit("days"), digits: 0 };

/** Exported for whoever tests that sentence and record agree. */
export function sentencesOf({ groups, competing, landmarkDay }: HealingCurveAnswer): readonly string[] {
  const onCurve = groups.reduce((sum, { n }) => sum + n, 0);
  if (onCurve === 0) return [nobodyIn(groups) ? "No segment in this cohort." : "No segment of this cohort can be placed on a curve."];
  const lead = byGroup(groups, {
    text: medianText,
    rank: ({ median }) => (median.lower === null ? null : median.days),
    lowest: "the earliest median",
    highest: "the latest",
  });
  const censored = groups.reduce((sum, group) => sum + group.censored, 0);
  const ended = groups.reduce((sum, group) => sum + group.ended, 0);
  const [healed, rescued] = groups.reduce(([all, after], group) => [all + group.healed, after + group.rescued], [0, 0]);
  const healedText = `${grouped(healed)} healed${rescued === 0 ? "" : `, ${grouped(rescued)} of them after further bone surgery`}`;
  const unhealed =
    censored === 0
      ? "none was unhealed at its last film"
      : `${grouped(censored)} not healed at the last film ${censored === 1 ? "is" : "are"} in up to that film`;
  const gone = competing === null ? "" : `; ${grouped(ended)} can’t heal so any more (${competing})`;
  const from =
    landmarkDay === null
      ? []
      : [`Days are counted from day ${landmarkDay} after surgery, over bones by then lengthened, unhealed and still followed.`];
  return [
    `${upperFirst(lead)}.`,
    ...from,
    `Of ${counted(onCurve, "segment")} on ${groups.length === 1 ? "the curve" : "the curves"}, ${healedText}; ${unhealed}${gone}.`,
  ];
}

function medianText({ n, median, curve }: CurveGroup): string {
  if (n === 0) return "has no segment on the curve";
  if (median.days !== null)
    return `half had healed by ${decimals(median.days, 0)} days (${shownInterval(median, days) ?? "no interval"}; ${counted(n, "segment")})`;
  const last = curve.at(-1);
  if (!last) return `has too few patients for a curve (${counted(n, "segment")})`;
  return `half had not healed by ${decimals(last.day, 0)} days, when ${percentText(last.estimate)} % had (${counted(n, "segment")})`;
}
