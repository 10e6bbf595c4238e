import type { CaseVisit, Held } from "@/lib/answers";
import { fieldsOf } from "@/lib/codebook";
import { valueText } from "../../_words";
import { CorrectLink } from "./correct-link";

type Props = { readonly visits: readonly CaseVisit[]; readonly name: string; readonly number: number };

/** Every visit, a row each, with the columns that any of them fills. */
export function Visits({ visits, name, number }: Props) {
  if (visits.length === 0) return <p className="muted">No visit is held.</p>;
  const columns = columnsOf(visits);
  return (
    <details className="not-folded-on-paper">
      <summary>
        {visits.length === 1 ? "The visit" : `All ${visits.length} visits`} of the {name}
      </summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled */}
      <section className="scrolls" tabIndex={0} aria-label={`Visits of the ${name}`}>
        <table className="data">
          <caption className="only-heard">Visits of the {name}, days from surgery</caption>
          <thead>
            <tr>
              <th scope="col" className="start">
                Day
              </th>
              {columns.map(({ field, label, kind, unit }) => (
                <th key={field} scope="col" className={isNumber(kind) ? undefined : "start"}>
                  {label}
                  {unit === null ? null : <span className="under">{unit === "deg" ? "degrees" : unit}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>{visits.map((visit) => visitRow(visit, columns, number))}</tbody>
        </table>
      </section>
    </details>
  );
}

/** The fields that any visit has, in the codebook's order. */
function columnsOf(visits: readonly CaseVisit[]): readonly Held[] {
  const filled = new Map(visits.flatMap(({ recorded }) => recorded.map((held) => [held.field, held] as const)));
  return fieldsOf("visit").flatMap(([id]) => filled.get(id) ?? []);
}

const isNumber = (kind: Held["kind"]) => kind === "number" || kind === "days";

function visitRow({ visit, day, recorded }: CaseVisit, columns: readonly Held[], number: number) {
  const values = new Map(recorded.map((held) => [held.field, held]));
  return (
    <tr key={visit}>
      <th scope="row" className="start">
        {day < 0 ? `−${-day}` : day} <CorrectLink number={number} table="visit" entity={visit} label={`the visit of day ${day}`} />
      </th>
      {columns.map(({ field, kind }) => (
        <td key={field} className={isNumber(kind) ? undefined : "start"}>
          {valueText({ kind }, values.get(field)?.value ?? null)}
        </td>
      ))}
    </tr>
  );
}
