import type { Metadata } from "next";
import { type CasebookAnswer, casebook, highestCase } from "@/lib/answers";
import { counted, grouped } from "@/lib/charts";
import { registry } from "../_data/registry";
import type { PageAsked } from "../_page/asked";
import { Whose } from "./_client/whose";
import { BookSentence } from "./_parts/book-sentence";
import { BookTable } from "./_parts/book-table";
import { Columns } from "./_parts/columns";
import { NotUnderstood } from "./_parts/not-understood";
import { NothingHeld } from "./_parts/nothing-held";
import { Reckoned } from "./_parts/reckoned";
import { Search } from "./_parts/search";
import { Window } from "./_parts/window";
import { type BookAsked, questionOf, readBookAsked } from "./_question";

export const metadata: Metadata = { title: "Casebook" };

export default async function Casebook({ searchParams }: PageAsked) {
  const open = await registry();
  const known = { newestBatch: (await open.state()).batch, highestCase: await highestCase(open) };
  const read = readBookAsked(await searchParams, known);
  if ("troubles" in read) return <NotUnderstood troubles={read.troubles} />;
  return <Book asked={read.asked} highestCase={known.highestCase} />;
}

type BookProps = { readonly asked: BookAsked; readonly highestCase: number };

async function Book({ asked, highestCase }: BookProps) {
  const answer = await casebook(await registry(), questionOf(asked));
  if (answer.held === 0) return <NothingHeld />;
  return (
    <main className="sheet" id="page">
      <h1 className="only-heard">Casebook</h1>
      <BookSentence asked={asked} />
      <Search asked={asked} highestCase={highestCase} />
      <p className="answer number">
        {answerWords(answer)}
        {asked.search === "" ? null : <span className="only-printed"> Searched for: {asked.search}.</span>}
      </p>
      <Reckoned asked={asked} answer={answer} />
      <Whose />
      {answer.segments === 0 ? null : (
        <>
          <Columns asked={asked} answer={answer} />
          <BookTable asked={asked} answer={answer} />
          <Window asked={asked} answer={answer} />
        </>
      )}
    </main>
  );
}

function answerWords({ segments, cases, held }: CasebookAnswer): string {
  const found = `${counted(segments, "segment")} in ${counted(cases, "case")}`;
  return segments === held ? `All ${found}.` : `${found}, of ${grouped(held)} held.`;
}
