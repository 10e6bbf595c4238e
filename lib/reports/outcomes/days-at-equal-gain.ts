import {
  type DaysAgainstGainAnswer,
  type DifferenceAnswer,
  daysAgainstGain,
  difference,
  type HealingAnswer,
  healing,
  logNormalFit,
  onStraightLines,
} from "@/lib/answers";
import { type DaysAgainstGainRecord, daysAgainstGainFigure, equalGainText, normalPlotFigure, once, reasonsText } from "@/lib/charts";
import { drawable } from "../told/drawable";
import { askedOf, type FromLandmark, landmarkOf, type PlaceQuestion, type Registry } from "../told/question";
import type { Told } from "../told/told";
import { commandWords } from "../words/command-words";
import { asSentence, notesOf } from "../words/notes";
import { fixedPartText, indexDifferenceText, ratioText } from "./equal-gain-words";

export type EqualGainQuestion = PlaceQuestion & FromLandmark & { readonly measure: string };

/** Days against gain: what two groups differ by at equal gain, what each line is made of, and what the index would have said. */
export async function tellDaysAtEqualGain(registry: Registry, question: EqualGainQuestion): Promise<Told> {
  const asked = { ...askedOf(question), ...landmarkOf(question), measure: question.measure };
  const [answer, lines, fit] = await Promise.all([
    healing(registry, asked),
    daysAgainstGain(registry, asked),
    logNormalFit(registry, asked),
  ]);
  const compared = await comparedIn(registry, question, answer);
  const record = recordOnce(answer, lines, compared);
  return {
    title: "Days at equal gain",
    sentences: sentencesOf(answer, lines, compared),
    cautions: cautionsOf(answer, compared),
    figures: [drawable(daysAgainstGainFigure, record), drawable(normalPlotFigure, fit)],
    tables: [],
    definition: answer.definition.sentence,
    method: methodOf(lines, compared),
    leftOut: answer.groups.map((group) => ({ label: group.label, text: reasonsText(group) })).filter(({ text }) => text !== ""),
    notes: notesOf([...answer.notes, ...(compared?.notes ?? [])], answer.groups),
    references: [
      { of: "days at equal gain by group", stamp: answer.stamp },
      { of: "the lines", stamp: lines.stamp },
      { of: "the fit of the model of time", stamp: fit.stamp },
      ...(compared ? [{ of: "the two groups compared", stamp: compared.stamp }] : []),
    ],
    commands: commandsOf(question, compared, answer),
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

/** Two groups of one field are compared; of more, each has its days at one gain, and pairs are compared side by side. */
function pairOf(
  { by }: PlaceQuestion,
  answer: HealingAnswer,
): readonly [HealingAnswer["groups"][number], HealingAnswer["groups"][number]] | null {
  const [field, second] = by;
  if (field === undefined || second !== undefined || field.includes(":")) return null;
  const known = answer.groups.filter(({ key }) => key[field] !== null);
  const [a, b] = known;
  return a && b && known.length === 2 ? [a, b] : null;
}

async function comparedIn(registry: Registry, question: EqualGainQuestion, answer: HealingAnswer): Promise<DifferenceAnswer | null> {
  const pair = pairOf(question, answer);
  const [field] = question.by;
  if (pair === null || field === undefined) return null;
  const { asOf, where } = askedOf(question);
  const values = [pair[0].key[field] ?? null, pair[1].key[field] ?? null] as const;
  return difference(registry, {
    measure: question.measure,
    between: { field, values, where },
    ...landmarkOf(question),
    ...(asOf === undefined ? {} : { asOf }),
  });
}

function recordOf(answer: HealingAnswer, lines: DaysAgainstGainAnswer, compared: DifferenceAnswer | null): DaysAgainstGainRecord {
  const groups = answer.groups.map((group) => {
    return { ...group, line: lines.groups.find(({ label }) => label === group.label)?.line ?? null };
  });
  const equal = compared?.differences.find(({ what }) => what === "days at equal gain");
  return { ...answer, groups, said: equal ? ratioText(equal, labelsOf(answer), linesIn(compared)) : equalGainText(answer.groups) };
}

/** Lines and comparison follow from the answer's question. */
const recordOnce = once(recordOf);

function linesIn(compared: DifferenceAnswer | null) {
  return compared?.differences.find(({ what }) => what === onStraightLines) ?? null;
}

function labelsOf({ groups, by }: HealingAnswer): (value: string) => string {
  return (value) => groups.find(({ key }) => String(key[by[0] ?? ""]) === value)?.label ?? value;
}

function sentencesOf(answer: HealingAnswer, lines: DaysAgainstGainAnswer, compared: DifferenceAnswer | null): readonly string[] {
  const naming = labelsOf(answer);
  const equal = compared?.differences.find(({ what }) => what === "days at equal gain");
  const index = compared?.differences.find(({ kind, what }) => kind === "difference" && what !== onStraightLines);
  return [
    equal ? ratioText(equal, naming, linesIn(compared)) : null,
    equalGainText(answer.groups) ??
      (answer.groups.every(({ segments }) => segments === 0)
        ? "No segment in this cohort."
        : "Too few bones to say how many days they take at one gain."),
    fixedPartText(lines.groups),
    index ? indexDifferenceText(index, naming) : null,
  ].filter((text) => text !== null);
}

function cautionsOf(answer: HealingAnswer, compared: DifferenceAnswer | null): readonly string[] {
  const notes = [...answer.notes, ...(compared?.notes ?? [])];
  const shared = notes.find(({ code }) => code === "shared-denominator");
  return shared ? [asSentence(shared.text)] : [];
}

function methodOf(lines: DaysAgainstGainAnswer, compared: DifferenceAnswer | null): string {
  const equal = compared?.differences.find(({ what }) => what === "days at equal gain");
  return [lines.method, "days at the median gain by a log-normal time model, the unhealed in", equal?.method].filter(Boolean).join("; ");
}

function commandsOf(question: EqualGainQuestion, compared: DifferenceAnswer | null, answer: HealingAnswer): readonly string[] {
  const landmark = question.landmark === undefined ? null : String(question.landmark);
  const place = commandWords("outcome days-at-equal-gain", question, { measure: question.measure, landmark });
  const plain = commandWords(`measure ${question.measure}`, question, { landmark });
  const pair = pairOf(question, answer);
  const [field = ""] = question.by;
  if (compared === null || pair === null) return [place, plain];
  const values = pair.map(({ key }) => String(key[field])).join(",");
  return [plain, commandWords(`compare ${question.measure}`, { ...question, by: [] }, { between: `${field}=${values}`, landmark })];
}
