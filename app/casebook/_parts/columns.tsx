import { type CasebookAnswer, type CasebookColumn, casebookColumns } from "@/lib/answers";
import { addressOf, type BookAsked } from "../_question";
import { Kept } from "./book-sentence";

type Props = { readonly asked: BookAsked; readonly answer: CasebookAnswer };

const groups: Readonly<Record<CasebookColumn["group"], string>> = {
  "worked-out": "Worked out",
  before: "Before surgery",
  operation: "Operation",
  lengthening: "Lengthening",
  later: "Later",
  patient: "Patient",
};

/** The columns to choose from, folded; what is ticked goes into the address. */
export function Columns({ asked, answer }: Props) {
  const chosen = new Set(answer.columns.map(({ id }) => id));
  return (
    <details className="columns sans not-printed">
      <summary>Choose the columns</summary>
      <form action="/casebook" method="get">
        <div className="column-groups">
          {Object.entries(groups).map(([group, words]) => (
            <fieldset key={group}>
              <legend>{words}</legend>
              {casebookColumns.filter((column) => column.group === group).map((column) => columnChoice(column, chosen.has(column.id)))}
            </fieldset>
          ))}
        </div>
        <p className="doings">
          <button type="submit">Show these columns</button>
          <a href={addressOf({ ...asked, columns: null })}>The usual ones</a>
        </p>
        <Kept asked={asked} but={["columns"]} />
      </form>
    </details>
  );
}

function columnChoice({ id, label, unit }: CasebookColumn, isChosen: boolean) {
  return (
    <label key={id}>
      <input type="checkbox" name="columns" value={id} defaultChecked={isChosen} autoComplete="off" /> {label}
      {unit === null || unit === "days" ? null : <span className="muted"> {unit}</span>}
    </label>
  );
}
