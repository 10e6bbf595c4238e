import type { TodayAnswer } from "@/lib/answers";
import { rowWords } from "@/lib/charts";
import { timeText } from "../_page/time";

type Batch = TodayAnswer["batches"][number];

export function Batches({ answer }: { readonly answer: TodayAnswer }) {
  return (
    <section aria-labelledby="batches">
      <h2 id="batches">Last batches</h2>
      <ol className="plain">
        {answer.batches.map((batch) => (
          <li key={batch.batch} className="batch">
            <BatchLine batch={batch} />
            <TakeBack batch={batch.batch} />
          </li>
        ))}
      </ol>
    </section>
  );
}

function BatchLine({ batch }: { readonly batch: Batch }) {
  return (
    <p className="sans">
      <strong>Batch {batch.batch}</strong>, {timeText(batch.at)}: {whatText(batch)}.{" "}
      <span className="muted">
        Content <code>{batch.contentHash.slice(0, 12)}</code>
      </span>
    </p>
  );
}

function whatText({ kind, undoes, counts }: Batch): string {
  const rows = rowWords(counts) || "no rows";
  if (undoes !== null) return `took batch ${undoes} back (${rows})`;
  return kind === "intake" ? `brought in ${rows}` : `${kind}, ${rows}`;
}

function TakeBack({ batch }: { readonly batch: number }) {
  return (
    <details className="sans not-printed">
      <summary>Take batch {batch} back</summary>
      <p>
        Every case that it touched goes back to what was held before it, as a new batch that stands in this list for everyone to see. Taking
        that batch back brings this one again.
      </p>
      <form method="post" action="/batches/undo">
        <input type="hidden" name="batch" value={batch} />
        <button type="submit">Take batch {batch} back</button>
      </form>
    </details>
  );
}
