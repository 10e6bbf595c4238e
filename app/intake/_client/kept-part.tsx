import { counted } from "@/lib/charts";
import { tableNames } from "@/lib/codebook";
import type { View } from "../_talk/view";
import { Absent, Changes } from "./against-held";
import { Corrected } from "./corrected";
import { commit } from "./doings";
import { GoOn } from "./go-on";
import { NotYet } from "./not-yet";
import type { PartProps } from "./part-props";
import { ReceiptShown } from "./receipt-shown";
import { madeWords, nouns } from "./words";

/** What will be kept: against what is held, new, changed, the same and absent; then the commit, and its receipt. */
export function KeptPart({ store, state, goTo }: PartProps) {
  const { view, receipt } = state;
  if (receipt !== null) return <ReceiptShown store={store} receipt={receipt} goTo={goTo} />;
  if (view === null) return <NotYet store={store} state={state} />;
  const news = newsOf(view);
  const open = view.questions.length;
  return (
    <>
      <p className="answer">{keptWords(view, news)}</p>
      <AgainstHeld view={view} />
      <Changes changes={view.changes} />
      <Corrected store={store} state={state} corrected={view.corrected} />
      <Absent absent={view.absent} />
      <div className="doings sans">
        {open > 0 ? <span className="muted">{counted(open, "question")} must be answered first.</span> : null}
        {open === 0 && !state.stale ? <KeepButton store={store} news={news} state={state} /> : null}
      </div>
      <p className="muted">
        What is sent: codes, numbers, pseudonyms, and days on each person’s own line, with how many findings of each kind there were. No
        name, no number of yours, no date, no text, no header, not the file’s name.
      </p>
      <GoOn from="kept" state={state} goTo={goTo} />
    </>
  );
}

type KeepProps = Pick<PartProps, "store" | "state"> & { readonly news: number };

/** A file without news may still bring the key's new passphrase. */
function KeepButton({ store, state, news }: KeepProps) {
  const sealed = state.key.is === "open" && state.key.how === "sealed";
  if (news === 0 && !sealed) return null;
  return (
    <button type="button" className="first" disabled={state.working !== null} onClick={() => void commit(store)}>
      {news > 0 ? `Keep ${counted(news, "row")}` : "Keep the key’s new passphrase"}
    </button>
  );
}

function newsOf({ counts: { fresh, changed, made } }: View): number {
  return tableNames.reduce((sum, table) => sum + (fresh ? fresh[table] + (changed?.[table] ?? 0) : made[table]), 0);
}

function keptWords({ counts, stage }: View, news: number): string {
  const rows = tableNames.reduce((sum, table) => sum + counts.made[table], 0);
  if (stage === "columns") return "Nothing yet: questions about the columns are open.";
  if (rows === 0) return "Nothing: no row stands. Mend what is set aside and bring the file again.";
  if (news === 0) return `Nothing is new: the registry holds all ${rows} rows as they are.`;
  return `${madeWords(counts.made)} stand; ${counted(news, "row")} ${news === 1 ? "brings" : "bring"} something new.`;
}

function AgainstHeld({ view: { counts } }: { readonly view: View }) {
  const { made, fresh, changed, unchanged, absent } = counts;
  const shown = tableNames.filter((table) => made[table] + (absent?.[table] ?? 0) > 0);
  if (shown.length === 0) return null;
  const cells = [fresh ?? made, changed, unchanged, absent];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls" tabIndex={0} aria-label="Rows against what is held">
      <table className="data">
        <caption className="only-heard">Rows against what is held</caption>
        <thead>
          <tr>
            <th scope="col" className="start">
              Rows
            </th>
            <th scope="col">new</th>
            <th scope="col">changed</th>
            <th scope="col">as held</th>
            <th scope="col">
              held, not in the file <span className="under">they stay held</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {shown.map((table) => (
            <tr key={table}>
              <th scope="row" className="start">
                {nouns[table]}s
              </th>
              {cells.map((counted, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: four columns that never change their order
                <td key={i}>{counted === null ? "–" : counted[table]}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
