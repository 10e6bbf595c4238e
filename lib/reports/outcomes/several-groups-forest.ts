import type { SeveralAnswer } from "@/lib/answers";
import { type ForestRow, forestFigure } from "@/lib/charts";
import { type Drawable, drawable } from "../told/drawable";
import { wordsOf } from "./several-groups-words";
import { analysedIn, unitWords } from "./side-by-side-forest";
import { unitOfDifference } from "./side-by-side-words";

/** Every group against all others, under its outcome: an axis for each unit. */
export function severalForests(answers: readonly SeveralAnswer[]): readonly Drawable[] {
  const units = new Set(answers.flatMap(({ differences }) => differences.map((one) => unitOfDifference(one).name)));
  return [...units].flatMap((unit) => {
    const own = answers.filter(({ differences }) => differences.some((one) => unitOfDifference(one).name === unit));
    const [first] = own;
    if (!first) return [];
    const rows = own.flatMap((answer) => rowsOf(answer, unit));
    const { batch, dataTo, stamp } = first;
    const record = {
      kind: "difference",
      unit,
      sides: ["less than in all others", "more than in all others"],
      rows,
      batch,
      stamp,
      dataTo,
      definition: {
        title: `Each group less all others, by outcome${unitWords(unit)}`,
        sentence: "mean of the group less that of all others; the first outcome’s reference stands here, each has its own below",
      },
    } as const;
    return { ...drawable(forestFigure, record), id: `comparison-several-${unit.replace(/\W+/g, "-")}` };
  });
}

function rowsOf(answer: SeveralAnswer, unit: string): readonly ForestRow[] {
  return answer.differences
    .filter((difference) => unitOfDifference(difference).name === unit)
    .map((difference) => {
      const { estimate, lower, upper, a } = difference;
      return {
        label: wordsOf(difference, answer),
        heading: answer.definition.title,
        estimate,
        lower,
        upper,
        ...analysedIn(answer.groups.filter(({ label }) => label === a)),
        tested: lower !== null,
      };
    });
}
