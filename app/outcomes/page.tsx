import type { Metadata } from "next";
import { clockList, clocksAsOf, healing, type MeasureEntry } from "@/lib/answers";
import { answerOf, captionOf, clusteringOf, equalGainText, figureCsv, isCrowded, tableOf } from "@/lib/charts";
import { describeWhere } from "@/lib/cohorts";
import { registry } from "../_data/registry";
import { standing } from "../_data/standing";
import type { PageAsked } from "../_page/asked";
import { noBreak } from "../_page/no-break";
import { Figure } from "./_client/figure";
import { drawingOf } from "./_drawing";
import { NoData } from "./_parts/no-data";
import { NotUnderstood } from "./_parts/not-understood";
import { Numbers } from "./_parts/numbers";
import { QuestionSentence } from "./_parts/question-sentence";
import { WorkedOut } from "./_parts/worked-out";
import { type OutcomesQuestion, readQuestion } from "./_question";

export const metadata: Metadata = { title: "Outcomes" };

const widths = { wide: 880, narrow: 328 } as const;

export default async function Outcomes({ searchParams }: PageAsked) {
  const { batch, segments } = await standing();
  const clocks = clockList(await clocksAsOf(await registry()));
  const read = readQuestion(await searchParams, batch, clocks);
  if ("troubles" in read) return <NotUnderstood troubles={read.troubles} />;
  if (segments === 0 && read.question.asOf === null) return <NoData />;
  return <Answered question={read.question} clocks={clocks} />;
}

type Props = { readonly question: OutcomesQuestion; readonly clocks: readonly MeasureEntry[] };

async function Answered({ question, clocks }: Props) {
  const { unit, asOf, where, ...asked } = question;
  const answer = await healing(await registry(), { ...asked, where, ...(asOf === null ? {} : { asOf }) });
  const draw = (width: number) => drawingOf(answer, { width, unit });
  const equalGain = equalGainText(answer.groups);
  const wide = draw(widths.wide);
  const crowded = isCrowded(wide);
  return (
    <main className="sheet" id="page">
      <h1 className="only-heard">Outcomes: {answer.definition.title.toLowerCase()}</h1>
      <QuestionSentence question={question} answer={answer} clocks={clocks} />
      <p className="answer number" aria-live="polite">
        {noBreak(answerOf(answer, unit))}
      </p>
      {equalGain === null ? null : <p className="number">{noBreak(equalGain)}</p>}
      <Figure
        key={`${answer.stamp} ${unit}`}
        wide={wide}
        narrow={draw(widths.narrow)}
        caption={captionOf(answer, { unit, cohort: describeWhere(where), crowded })}
        fileName={`${answer.measure}-${answer.stamp}.svg`}
        csv={figureCsv(tableOf(answer, unit))}
        crowded={crowded}
      />
      <Numbers table={tableOf(answer, unit)} caption="The numbers of the figure, by group" />
      <section className="told-table">
        <h2>What clustering does to the interval</h2>
        <Numbers table={clusteringOf(answer, unit)} caption="What clustering does to the interval" />
      </section>
      <WorkedOut answer={answer} question={question} />
    </main>
  );
}
