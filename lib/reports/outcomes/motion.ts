import { ask, type FollowUpAnswer, followUp, type MeasureAnswer } from "@/lib/answers";
import { type Column, count, estimate, shownUnit, tableFrom, words } from "@/lib/charts";
import { askedOf, type Registry } from "../told/question";
import type { Told, ToldTable } from "../told/told";
import { commandWords } from "../words/command-words";
import { type MeasuredQuestion, tellMeasured } from "./measured";

/** What lengthening takes most often; it stands beside whatever was asked. */
const lostMost = ["motion-knee-flexion", "motion-ankle-dorsiflexion"];
const windows = ["3-months", "6-months", "12-months", "24-months"] as const;

/** Motion of a joint at one moment, and what was lost at each window beside who was seen then. */
export async function tellMotion(registry: Registry, question: MeasuredQuestion): Promise<Told> {
  const told = await tellMeasured(registry, question);
  const joint = question.measure.split(".")[0] ?? "";
  const joints = [joint, ...lostMost.filter((one) => one !== joint)];
  const asked = askedOf(question);
  const measures = joints.flatMap((one) => windows.map((window) => `${one}.lost-at-${window}`));
  const answers = await Promise.all(measures.map((measure) => ask(registry, { ...asked, measure }) as Promise<MeasureAnswer>));
  const followed = await followUp(registry, asked);
  return {
    ...told,
    tables: [...told.tables, windowsTable(answers, followed)],
    notes: [...told.notes, followed.caution],
    references: [
      ...told.references,
      ...answers.map(({ definition, stamp }) => ({ of: definition.title.toLowerCase(), stamp })),
      { of: "who was seen", stamp: followed.stamp },
    ],
    commands: [
      ...told.commands,
      ...measures.map((measure) => commandWords(`measure ${measure}`, question)),
      commandWords("follow-up", question),
    ],
  };
}

type Row = {
  readonly label: string;
  readonly motion: string;
  readonly window: string;
  readonly group: MeasureAnswer["groups"][number] | undefined;
  readonly counts: FollowUpAnswer["groups"][number]["windows"][number]["counts"] | undefined;
};

function windowsTable(answers: readonly MeasureAnswer[], followed: FollowUpAnswer): ToldTable {
  const rows = followed.groups.flatMap((group) =>
    answers.map((answer): Row => {
      const window = answer.measure.split(".lost-at-")[1] ?? "";
      const seen = group.windows.find(({ id }) => id === window);
      return {
        label: group.label,
        motion: answer.definition.title.split(",")[0] ?? "",
        window: seen?.label ?? window,
        group: answer.groups.find(({ label }) => label === group.label),
        counts: seen?.counts,
      };
    }),
  );
  const columns: Column<Row>[] = [
    words("group", "Group", ({ label }) => label),
    words("motion", "Motion", ({ motion }) => motion),
    words("window", "Window from surgery", ({ window }) => window),
    ...estimate<Row>("lost", "Lost, on average", shownUnit("deg"), ({ group }) => group?.mean),
    count("measured", "Motion measured", ({ group }) => group?.n ?? 0),
    count("seen", "Seen", ({ counts }) => counts?.seen ?? 0),
    count("due", "Due, not seen", ({ counts }) => counts?.due ?? 0),
    count("not-yet-due", "Not yet due", ({ counts }) => counts?.["not-yet-due"] ?? 0),
    count("dead", "Dead", ({ counts }) => counts?.dead ?? 0),
    count("lost-to", "Lost to follow-up", ({ counts }) => counts?.lost ?? 0),
  ];
  return { caption: "What was lost at each window, and how many were seen then", table: tableFrom(columns, rows) };
}
