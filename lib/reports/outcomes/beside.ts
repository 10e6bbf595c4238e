import { ask, type HealingAnswer, type MeasureAnswer, type MeasureGroup } from "@/lib/answers";
import { type Column, count, shareText, shownEstimate, shownUnit, tableFrom, words } from "@/lib/charts";
import { askedOf, type Registry } from "../told/question";
import type { Told } from "../told/told";
import { commandWords } from "../words/command-words";
import { asMeasure, countedOfMeasure, type MeasuredQuestion, tellMeasured } from "./measured";

type Row = { readonly answer: MeasureAnswer; readonly group: MeasureGroup };

/** Other measures of the same groups, one row each, under a measured place: what a reader asks in the same breath. */
export async function withBeside(
  registry: Registry,
  question: MeasuredQuestion,
  { told, measures, caption }: { readonly told: Told; readonly measures: readonly string[]; readonly caption: string },
): Promise<Told> {
  const answers = await Promise.all(
    measures.map(async (measure) => asMeasure((await ask(registry, { ...askedOf(question), measure })) as HealingAnswer | MeasureAnswer)),
  );
  return {
    ...told,
    tables: [...told.tables, { caption, table: besideTable(answers) }],
    references: [...told.references, ...answers.map(({ definition, stamp }) => ({ of: definition.title.toLowerCase(), stamp }))],
    commands: [...told.commands, ...measures.map((measure) => commandWords(`measure ${measure}`, question))],
  };
}

function besideTable(answers: readonly MeasureAnswer[]) {
  const labels = answers[0]?.groups.map(({ label }) => label) ?? [];
  const rows = labels.flatMap((label) =>
    answers.flatMap((answer): Row[] => answer.groups.filter((group) => group.label === label).map((group) => ({ answer, group }))),
  );
  const columns: Column<Row>[] = [
    words("group", "Group", ({ group }) => group.label),
    words("what", "What", ({ answer }) => answer.definition.title),
    count("n", "Measured", ({ group }) => group.n),
    words("value", "Value", valueText),
  ];
  return tableFrom(columns, rows);
}

function valueText({ answer, group }: Row): string {
  if (group.n === 0) return "nobody measured so";
  if (group.share) return shareText(group.share);
  return group.mean ? shownEstimate(group.mean, shownUnit(answer.unit), countedOfMeasure(answer)) : "no mean";
}

/** Alignment: the measure asked for, and how often axis, angulation and rotation ended outside their limits. */
export async function tellAlignment(registry: Registry, question: MeasuredQuestion): Promise<Told> {
  const measures = ["alignment-axis-outside", "alignment-angulation-outside", "alignment-rotation-outside"];
  return withBeside(registry, question, {
    told: await tellMeasured(registry, question),
    measures: measures.filter((id) => id !== question.measure),
    caption: "How often it ended outside the limits",
  });
}

/** Stature: the measure asked for, and beside it the plan, the legs, the proportions and the function of the same patients. */
export async function tellStature(registry: Registry, question: MeasuredQuestion): Promise<Told> {
  const measures = [
    "stature-gain-error",
    "residual-difference",
    "proportion-tibia-femur.change",
    "proportion-sitting-height.change",
    "motion-knee-flexion.lost-at-12-months",
    "motion-ankle-dorsiflexion.lost-at-12-months",
    "score-change",
  ];
  return withBeside(registry, question, {
    told: await tellMeasured(registry, question),
    measures: measures.filter((id) => id !== question.measure),
    caption: "Plan, legs, proportions and function of the same patients",
  });
}
