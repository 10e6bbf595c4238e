import type { Metadata } from "next";
import { counted } from "@/lib/charts";
import { standing } from "./_data/standing";
import type { PageAsked } from "./_page/asked";
import { Batches } from "./_today/batches";
import { FirstVisit } from "./_today/first-visit";
import { Statuses } from "./_today/statuses";
import { UndoSaid } from "./_today/undo-said";
import { ClerksWork } from "./_today/work";

export const metadata: Metadata = { title: "Today" };

export default async function Today({ searchParams }: PageAsked) {
  const [answer, asked] = [await standing(), await searchParams];
  if (answer.batch === 0)
    return (
      <main className="sheet" id="page">
        <FirstVisit />
      </main>
    );
  return (
    <main className="sheet" id="page">
      <h1>How does the registry stand?</h1>
      <p className="answer">
        It holds {counted(answer.segments, "segment")} of {counted(answer.patients, "patient")}, with {some(answer.visits, "visit")} and{" "}
        {some(answer.events, "event")}
        {answer.dataTo === null ? "" : `, operated on up to ${answer.dataTo}`}.
      </p>
      <UndoSaid asked={asked} />
      <Statuses answer={answer} />
      <ClerksWork answer={answer} />
      <Batches answer={answer} />
    </main>
  );
}

function some(n: number, noun: string): string {
  return n === 0 ? `no ${noun}s` : counted(n, noun);
}
