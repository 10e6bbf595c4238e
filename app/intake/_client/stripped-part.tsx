import type { CellShown, SampleShown } from "../_talk/view";
import { Dropped } from "./dropped";
import { GoOn } from "./go-on";
import { NotYet } from "./not-yet";
import type { PartProps } from "./part-props";
import { PersonsSeen } from "./persons-seen";

/** What we leave out: three rows as they stand and as they would be sent, column by column. */
export function StrippedPart({ store, state, goTo }: PartProps) {
  const { view } = state;
  if (view === null) return <NotYet store={store} state={state} />;
  const files = [...new Set(view.samples.map(({ file }) => file))];
  return (
    <>
      <p>
        The first rows that stand, each cell as it is in the file and, under it, what would be sent. What fades is taken out here and goes
        nowhere. A day is counted on the person’s own line, from a beginning that only the key knows: only the time between two of that
        person’s days means anything.
      </p>
      {files.map((file) => (
        <SampleTable key={file} file={file} samples={view.samples.filter((sample) => sample.file === file)} />
      ))}
      {view.samples.length === 0 ? <p>No row stands yet: mend what is set aside first.</p> : null}
      <Dropped sheets={view.sheets} />
      <PersonsSeen store={store} view={view} />
      <GoOn from="stripped" state={state} goTo={goTo} />
    </>
  );
}

function SampleTable({ file, samples }: { readonly file: string; readonly samples: readonly SampleShown[] }) {
  const headers = samples[0]?.cells.map(({ header }) => header) ?? [];
  const said = (i: number) => samples.some(({ cells }) => cells[i]?.fate !== "blank");
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls" tabIndex={0} aria-label={`Three rows of ${file}, before and after`}>
      <table className="data strip">
        <caption className="only-heard">Three rows of {file}, before and after</caption>
        <thead>
          <tr>
            <th scope="col" className="start">
              Column
            </th>
            {samples.map(({ row }) => (
              <th key={row} scope="col" className="start">
                Row {row}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {headers.map((header, i) =>
            said(i) ? (
              <tr key={header}>
                <th scope="row" className="start">
                  {header}
                </th>
                {samples.map(({ row, cells }) => (
                  <BeforeAndAfter key={row} cell={cells[i]} />
                ))}
              </tr>
            ) : null,
          )}
        </tbody>
      </table>
    </section>
  );
}

function BeforeAndAfter({ cell }: { readonly cell: CellShown | undefined }) {
  if (cell === undefined || cell.fate === "blank") return <td className="start" />;
  return (
    <td className="start">
      <span className={cell.fate === "kept" ? "before" : "before fades"}>{cell.cell}</span>
      {cell.becomes === null ? <span className="only-heard">, taken out</span> : null}
      {cell.fate === "out" || cell.becomes === null ? null : (
        <span className="after">
          <span className="only-heard">, sent as </span>
          {cell.becomes}
        </span>
      )}
    </td>
  );
}
