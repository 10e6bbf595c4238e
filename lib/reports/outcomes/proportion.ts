import {
  ask,
  type BeforeAfterAnswer,
  type MeasureAnswer,
  normKey,
  type ProportionGroup,
  proportionBeforeAfter,
  wordsOfCode,
} from "@/lib/answers";
import {
  type Column,
  count,
  counted,
  estimate,
  type ProportionRecord,
  proportionFigure,
  shownEstimate,
  shownUnit,
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

export type ProportionQuestion = PlaceQuestion & {
  readonly measure: BeforeAfterAnswer["measure"];
  /** The norm set to be shown beside it; `null`: raw values only. */
  readonly norm: string | null;
};

/** A proportion before and after, and what the gains alone predict; a norm only where one was chosen and fits everyone. */
export async function tellProportion(registry: Registry, question: ProportionQuestion): Promise<Told> {
  const { measure, norm } = question;
  const asked = askedOf(question);
  const answer = await proportionBeforeAfter(registry, { ...asked, measure });
  const predicted = (await ask(registry, { ...asked, measure: `${measure}.predicted` })) as MeasureAnswer;
  const others = await Promise.all(
    everyProportion.filter((id) => id !== measure).map((id) => proportionBeforeAfter(registry, { ...asked, measure: id })),
  );
  return {
    title: answer.definition.title,
    sentences: proportionSentences(answer),
    cautions: [...normCautions(answer, norm), ...growthCautions(answer)],
    figures: [drawable(proportionFigure, recordOf(answer, norm))],
    tables: [...(measure === "proportion-left-right" ? [] : [predictedTable(answer, predicted)]), othersTable(others)],
    definition: answer.definition.sentence,
    method: answer.method,
    leftOut: leftOutOf(answer.groups),
    notes: [],
    references: [
      { of: "before and after", stamp: answer.stamp },
      { of: "as the gains alone predict it", stamp: predicted.stamp },
      ...others.map(({ definition, stamp }) => ({ of: definition.title.toLowerCase(), stamp })),
    ],
    commands: [
      commandWords("outcome proportion", question, { measure, norm }),
      ...["before", "after", "change", "predicted"].map((moment) => commandWords(`measure ${measure}.${moment}`, question)),
    ],
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

const everyProportion = ["proportion-tibia-femur", "proportion-sitting-height", "proportion-leg", "proportion-span"] as const;

/** The proportions that were not asked for, of the same persons. */
function othersTable(others: readonly BeforeAfterAnswer[]): ToldTable {
  type Other = ProportionGroup & { readonly title: string };
  const rows = (others[0]?.groups ?? []).flatMap(({ label }) =>
    others.flatMap(({ definition: { title }, groups }): Other[] =>
      groups.filter((group) => group.label === label).map((group) => ({ ...group, title })),
    ),
  );
  const unit = shownUnit("ratio");
  const columns: Column<Other>[] = [
    words("group", "Group", ({ label }) => label),
    words("what", "Proportion", ({ title }) => title),
    count("n", "Before and after", ({ n }) => n),
    count("measured", "All measured", ({ measured }) => measured),
    ...estimate<Other>("before", "Before", unit, ({ before }) => before.mean),
    ...estimate<Other>("after", "After", unit, ({ after }) => after.mean),
    ...estimate<Other>("change", "Change", unit, ({ change }) => change.mean),
  ];
  return { caption: "The other proportions", table: tableFrom(columns, rows) };
}

type Norm = BeforeAfterAnswer["norms"][number];

/** Of a set with a norm for each sex, the one that fits the group. */
function normFor({ norms }: BeforeAfterAnswer, { normsFit, n }: ProportionGroup, chosen: string): Norm | null {
  if (n === 0) return null;
  return norms.find((one) => one.id === chosen && normsFit[normKey(one)] === null) ?? null;
}

function bandOf(norm: Norm) {
  const [from, to] = norm.range ?? [norm.mean - 1.96 * (norm.sd ?? 0), norm.mean + 1.96 * (norm.sd ?? 0)];
  const label = `${wordsOfCode(norm.id)}${norm.sex === "both" ? "" : `, ${norm.sex}`}, ${from.toFixed(2)} to ${to.toFixed(2)}`;
  return { from, to, label };
}

function recordOf(answer: BeforeAfterAnswer, chosen: string | null): ProportionRecord {
  const groups = answer.groups.map((group) => {
    const norm = chosen === null ? null : normFor(answer, group, chosen);
    return {
      ...group,
      before: group.before.mean,
      after: group.after.mean,
      change: group.change.mean,
      norm: norm ? bandOf(norm) : null,
      marks: group.points,
    };
  });
  return { ...answer, groups };
}

export function proportionSentences({ groups, unit, definition }: BeforeAfterAnswer): readonly string[] {
  const measured = groups.filter(({ n }) => n > 0);
  if (measured.length === 0)
    return [nobodyIn(groups) ? "No segment in this cohort." : "Nobody in this cohort was measured before and after."];
  const shown = shownUnit(unit);
  const change = byGroup(measured, {
    text: (group) => shownEstimate(group.change.mean, shown, "person"),
    rank: ({ change: own }) => (own.mean.lower === null ? null : own.mean.estimate),
    lowest: "the lowest mean change",
    highest: "the highest",
  });
  return [`${definition.title}, after less before: ${change}.`, ...sourceText(groups)];
}

/** Of one group, whose persons are counted once: how many readings were measured. */
function sourceText(groups: readonly ProportionGroup[]): readonly string[] {
  const [only] = groups;
  if (!only || groups.length > 1) return [];
  const { measured, n } = only;
  const rest = measured === n ? "" : "; of the others some were worked out from the segments";
  return [
    `Of ${counted(n, "person")} measured before and after, ${measured} ${measured === 1 ? "has" : "have"} every reading measured${rest}.`,
  ];
}

function normCautions(answer: BeforeAfterAnswer, chosen: string | null): readonly string[] {
  if (chosen === null) return [];
  const offered = answer.norms.filter(({ id }) => id === chosen);
  const name = wordsOfCode(chosen);
  if (offered.length === 0) return [`No norm of ${name} is published for this proportion, so none is shown.`];
  const refused = answer.groups.flatMap((group) => {
    if (group.n === 0 || normFor(answer, group, chosen)) return [];
    const why = offered.map((norm) => group.normsFit[normKey(norm)]).filter((text) => text !== null && text !== undefined);
    return [`The norm (${name}) isn’t shown for ${group.label}: ${why[0] ?? "it doesn’t fit"}.`];
  });
  const shown = answer.groups.some((group) => normFor(answer, group, chosen));
  const source = shown ? [`A norm is a description, not a target. Source: ${offered[0]?.source ?? ""}.`] : [];
  return [...refused, ...source];
}

function growthCautions({ groups }: BeforeAfterAnswer): readonly string[] {
  return groups.some(({ under18 }) => under18 > 0) ? ["Under 18, change is growth and surgery together."] : [];
}

type Row = ProportionGroup & { readonly predicted: MeasureAnswer["groups"][number] | undefined };

function predictedTable(answer: BeforeAfterAnswer, predicted: MeasureAnswer): ToldTable {
  const unit = shownUnit(answer.unit);
  const rows = answer.groups.map((group): Row => ({ ...group, predicted: predicted.groups.find(({ label }) => label === group.label) }));
  const columns: Column<Row>[] = [
    words("group", "Group", ({ label }) => label),
    count("patients", "Patients", ({ patients }) => patients),
    count("n", "Before and after", ({ n }) => n),
    count("measured", "All measured", ({ measured }) => measured),
    ...estimate<Row>("after", "After", unit, ({ after }) => after.mean),
    ...estimate<Row>("predicted", "As the gains predict", unit, ({ predicted: own }) => own?.mean),
    count("predicted-n", "Predicted for", ({ predicted: own }) => own?.n),
    {
      id: "gain",
      head: "Median stature gain",
      unit: "mm",
      align: "end",
      cell: ({ medianGainMm }) => (medianGainMm === null ? "–" : medianGainMm.toFixed(0)),
    },
  ];
  return { caption: "What the gains alone predict", table: tableFrom(columns, rows) };
}
