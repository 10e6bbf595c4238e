import { counted, listed } from "@/lib/charts";
import { type TableName, tableNames } from "@/lib/codebook";
import { pathOf } from "../../_page/pages";
import type { Receipt } from "../_talk/receipt";
import { startAnew } from "./doings";
import type { Step } from "./steps";
import type { IntakeStore } from "./store";
import { nouns } from "./words";

type Props = { readonly store: IntakeStore; readonly receipt: Receipt; readonly goTo: (step: Step) => void };

/** What was kept, how many, how to take it back, and where to go from here. */
export function ReceiptShown({ store, receipt, goTo }: Props) {
  const { batch, committed, changed, unchanged, waiting, contentHash } = receipt;
  const outcomes = pathOf("Outcomes");
  return (
    <div className="receipt">
      <p className="answer">
        {batch === null
          ? "Nothing was new: the registry holds all of it already, and is as it was."
          : `Kept, as batch ${batch}: ${countsWords(committed, "new")}${any(changed) ? `; ${countsWords(changed, "changed")}` : ""}.`}
      </p>
      <p className="sans number">
        {any(unchanged) ? `As held before: ${countsWords(unchanged, "")}. ` : ""}Content <code>{contentHash.slice(0, 12)}</code>
      </p>
      {any(waiting) ? (
        <p>
          {countsWords(waiting, isOne(waiting) ? "waits" : "wait")} for the sheet that holds {isOne(waiting) ? "its" : "their"} segment or
          patient: bring it next. Until then {isOne(waiting) ? "it is" : "they are"} in no figure.
        </p>
      ) : null}
      {batch === null ? null : <TakeBack batch={batch} />}
      {batch === null ? null : <p className="only-printed">To take it back: Today, last batches, take batch {batch} back.</p>}
      <p className="doings sans not-printed">
        {outcomes === null ? null : (
          <a className="button first" href={outcomes}>
            See what came of it: Outcomes
          </a>
        )}
        <a className="button" href="/">
          Today
        </a>
        <button
          type="button"
          onClick={() => {
            void startAnew(store);
            goTo("arrived");
          }}
        >
          Bring another file
        </button>
      </p>
    </div>
  );
}

export function TakeBack({ batch }: { readonly batch: number }) {
  return (
    <details className="sans not-printed">
      <summary>The wrong file? Take batch {batch} back</summary>
      <p>
        Every case that it touched goes back to what was held before it, as a new batch that stands in the list of Today for everyone to
        see. Taking that batch back brings this one again. It can be done now or later, from Today.
      </p>
      <form method="post" action="/batches/undo">
        <input type="hidden" name="batch" value={batch} />
        <button type="submit">Take batch {batch} back</button>
      </form>
    </details>
  );
}

type Counts = Readonly<Record<TableName, number>>;

function any(counts: Counts): boolean {
  return tableNames.some((table) => counts[table] > 0);
}

function isOne(counts: Counts): boolean {
  return tableNames.reduce((sum, table) => sum + counts[table], 0) === 1;
}

function countsWords(counts: Counts, what: string): string {
  const parts = tableNames.flatMap((table) => (counts[table] > 0 ? [counted(counts[table], nouns[table])] : []));
  return parts.length === 0 ? `nothing ${what}` : `${listed(parts)} ${what}`.trim();
}
