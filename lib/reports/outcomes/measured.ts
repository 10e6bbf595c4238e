import { type AnyQuestion, ask, type HealingAnswer, isHealing, type MeasureAnswer, type MeasureGroup, type Share } from "@/lib/answers";
import {
  type CountedOf,
  count,
  type DistributionRecord,
  distributionFigure,
  estimate,
  shareText,
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
import { notesOf } from "../words/notes";

export type MeasuredQuestion = PlaceQuestion & { readonly measure: string; readonly score?: string | null };

/** Any measure of a number or a share, by group: its distribution, or its counts. */
export async function tellMeasured(registry: Registry, question: MeasuredQuestion): Promise<Told> {
  const { measure, score = null } = question;
  const asked: AnyQuestion = { ...askedOf(question), measure, ...(score === null ? {} : { score }) };
  const answer = asMeasure(await ask(registry, asked));
  const shares = answer.groups.some(({ share }) => share);
  return {
    title: answer.definition.title,
    sentences: measuredSentences(answer),
    cautions: [],
    figures: shares ? [] : [drawable(distributionFigure, recordOf(answer))],
    tables: shares ? [sharesTable(answer)] : [],
    definition: answer.definition.sentence,
    method: answer.method,
    leftOut: leftOutOf(answer.groups),
    notes: notesOf(answer.notes, answer.groups),
    references: [{ of: answer.definition.title.toLowerCase(), stamp: answer.stamp }],
    commands: [commandWords(`measure ${measure}`, question, { score })],
    batch: answer.batch,
    dataTo: answer.dataTo,
  };
}

/** A clock that doesn't end at consolidation is read like any other number. */
export function asMeasure(answer: HealingAnswer | MeasureAnswer): MeasureAnswer {
  if (!isHealing(answer)) return answer;
  const groups = answer.groups.map(
    ({ marks, n, healed, ...group }): MeasureGroup => ({
      ...group,
      n: n ?? healed ?? 0,
      rows: marks.map(({ person, segment, value }) => ({ person, segment, value })),
    }),
  );
  return { ...answer, groups };
}

/** A measure of persons has rows without a segment; one without rows counts as of segments. */
export function countedOfMeasure({ groups }: MeasureAnswer): CountedOf {
  const [first] = groups.flatMap(({ rows = [] }) => rows.slice(0, 1));
  return first?.segment === null ? "person" : "segment";
}

function recordOf(answer: MeasureAnswer): DistributionRecord {
  return { ...answer, of: countedOfMeasure(answer) };
}

export function measuredSentences(answer: MeasureAnswer): readonly string[] {
  const { groups, unit, definition } = answer;
  const measured = groups.filter(({ n }) => n > 0);
  if (measured.length === 0)
    return [nobodyIn(groups) ? "No segment in this cohort." : `Nobody in this cohort was measured so: ${definition.title.toLowerCase()}.`];
  if (measured.some(({ share }) => share)) return [`${definition.title}: ${sharesText(measured)}.`];
  const of = countedOfMeasure(answer);
  const shown = shownUnit(unit);
  const said = byGroup(measured, {
    text: ({ mean }) => (mean ? shownEstimate(mean, shown, of) : "no mean"),
    rank: ({ mean }) => (mean?.lower === null ? null : (mean?.estimate ?? null)),
    lowest: "the lowest mean",
    highest: "the highest",
  });
  return [`${definition.title}, on average: ${said}.`];
}

function sharesText(groups: readonly MeasureGroup[]): string {
  return byGroup(groups, {
    text: ({ share }) => (share ? shareText(share) : "not known"),
    rank: ({ share }) => (share?.lower === null ? null : (share?.estimate ?? null)),
    lowest: "the lowest share",
    highest: "the highest",
  });
}

const percent = { name: "%", perRecord: 100, digits: 0, valueDigits: 0 };

function sharesTable({ groups, definition }: MeasureAnswer): ToldTable {
  const share = ({ share: own }: MeasureGroup): Share | null => own ?? null;
  const table = tableFrom<MeasureGroup>(
    [
      words("group", "Group", ({ label }) => label),
      count("segments", "Segments", (group) => group.segments),
      count("patients", "Patients", (group) => group.patients),
      count("x", "Yes", (group) => share(group)?.x),
      count("n", "Of", ({ n }) => n),
      ...estimate<MeasureGroup>("share", "Share", percent, share),
    ],
    groups,
  );
  return { caption: definition.title, table };
}
