import { type CohortFlowAnswer, cohortFlow, type FlowLine } from "@/lib/answers";
import { type FlowRecord, flowFigure, reasonWords } from "@/lib/charts";
import { type Drawable, drawable } from "../told/drawable";
import type { Registry, Where } from "../told/question";

export type ToldFlow = { readonly answer: CohortFlowAnswer; readonly figure: Drawable };

/** From the registry to the cohort and on to what a measure analyses, as figure and table. */
export async function tellFlow(
  registry: Registry,
  asked: { readonly where: Where; readonly measure: string; readonly asOf?: number },
): Promise<ToldFlow> {
  const answer = await cohortFlow(registry, asked);
  const record: FlowRecord = {
    definition: answer.definition,
    batch: answer.batch,
    stamp: answer.stamp,
    dataTo: answer.dataTo,
    steps: answer.lines.map(({ kind, segments, patients, ...line }) => ({
      kind,
      segments,
      patients,
      words: wordsOf({ kind, ...line }, answer),
    })),
  };
  return { answer, figure: drawable(flowFigure, record) };
}

function wordsOf({ kind, reason, words }: Pick<FlowLine, "kind" | "reason" | "words">, { definition }: CohortFlowAnswer): string {
  if (reason === "analysed") return `analysed for ${definition.title.toLowerCase()}`;
  return kind === "leaves" ? reasonWords(words) : words;
}
