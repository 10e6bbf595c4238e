import type { Metadata } from "next";
import { notFound, redirect } from "next/navigation";
import { caseOf, firstOf } from "@/lib/answers";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { readCorrect } from "./_correct";
import { Body } from "./_parts/body";
import { CaseHead } from "./_parts/case-head";
import { CorrectForm } from "./_parts/correct-form";
import { EventsOfPerson } from "./_parts/events";
import { History } from "./_parts/history";
import { NumbersJoined } from "./_parts/numbers-joined";
import { Recorded } from "./_parts/recorded";
import { Said } from "./_parts/said";
import { Scores } from "./_parts/scores";
import { Segment } from "./_parts/segment";

type Props = PageAsked & { readonly params: Promise<{ readonly case: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Case ${(await params).case}` };
}

export default async function CasePage({ params, searchParams }: Props) {
  const [{ case: number }, asked] = [await params, await searchParams];
  const answer = await answerFor(number, asked.asOf);
  if (!answer) return elsewhere(number);
  const correct = readCorrect(asked.correct);
  return (
    <main className="sheet case" id="page">
      <CaseHead answer={answer} />
      <Said asked={asked} />
      {correct === null ? null : <CorrectForm answer={answer} asked={correct} trouble={textOf(asked.trouble)} />}
      <NumbersJoined answer={answer} />
      {answer.segments.map((segment) => (
        <Segment key={segment.segment} segment={segment} answer={answer} />
      ))}
      <Body answer={answer} />
      <Scores answer={answer} />
      <EventsOfPerson answer={answer} />
      <Recorded answer={answer} title="The patient, as recorded" table="person" entity={answer.case} recorded={answer.recorded} />
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

/** A second number of a patient has the first one's page; any other that isn't held has none. */
async function elsewhere(number: string): Promise<never> {
  const entity = /^\d{1,9}$/.test(number) ? Number(number) : 0;
  const first = firstOf(await (await registry()).joins(), entity);
  return first === entity ? notFound() : redirect(`/casebook/${first}`);
}

const textOf = (value: string | string[] | undefined) => (typeof value === "string" && /^[a-z-]{1,60}$/.test(value) ? value : null);
