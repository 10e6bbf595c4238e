import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { caseOf } from "@/lib/answers";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { Body } from "./_parts/body";
import { CaseHead } from "./_parts/case-head";
import { EventsOfPerson } from "./_parts/events";
import { History } from "./_parts/history";
import { Recorded } from "./_parts/recorded";
import { Scores } from "./_parts/scores";
import { Segment } from "./_parts/segment";

type Props = PageAsked & { readonly params: Promise<{ readonly case: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Case ${(await params).case}` };
}

export default async function CasePage({ params, searchParams }: Props) {
  const [{ case: number }, asked] = [await params, await searchParams];
  const answer = await answerFor(number, asked.asOf);
  if (!answer) notFound();
  return (
    <main className="sheet case" id="page">
      <CaseHead answer={answer} />
      {answer.segments.map((segment) => (
        <Segment key={segment.segment} segment={segment} answer={answer} />
      ))}
      <Body body={answer.body} segments={answer.segments} />
      <Scores scores={answer.scores} />
      <EventsOfPerson events={answer.events} />
      <Recorded title="The patient, as recorded" table="person" entity={answer.case} recorded={answer.recorded} />
      <History history={answer.history} />
    </main>
  );
}

/** The case, as of a batch where the address names one; `null` where there is none, or the address is no number. */
async function answerFor(number: string, asOf: string | string[] | undefined) {
  const open = await registry();
  const { batch: newest } = await open.state();
  if (!/^\d{1,9}$/.test(number)) return null;
  if (asOf === undefined) return caseOf(open, Number(number));
  const batch = typeof asOf === "string" && /^\d{1,9}$/.test(asOf) ? Number(asOf) : Number.NaN;
  return batch >= 1 && batch <= newest ? caseOf(open, Number(number), { asOf: batch }) : null;
}
