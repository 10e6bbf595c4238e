import type { Metadata } from "next";
import { type Completeness, type CompletenessItem, completeness } from "@/lib/answers";
import { CohortError, describeWhere, parseWhere, type Where } from "@/lib/cohorts";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { NotUnderstood } from "../_parts/not-understood";
import { NothingHeld } from "../_parts/nothing-held";

export const metadata: Metadata = { title: "How complete" };

/** How complete the records are, audit year by audit year. */
export default async function CompletenessPage({ searchParams }: PageAsked) {
  const where = whereIn((await searchParams).where);
  if (where === null) return <NotUnderstood troubles={[{ parameter: "where", expected: "a cohort" }]} />;
  const answer = await completeness(await registry(), { where });
  if (answer.years.length === 0 && Object.keys(where).length === 0) return <NothingHeld />;
  return (
    <main className="sheet" id="page">
      <p className="sans not-printed">
        <a href="/casebook">Casebook</a>
      </p>
      <h1>How complete are the records, year by year?</h1>
      <p className="muted">
        Of <span className="cohort">{describeWhere(where)}</span>, by audit year of surgery: segments that have it, of all of that year. A
        patient’s measure counts for each of its segments. The last year may still be filling.
      </p>
      <CompletenessTable answer={answer} />
      <p className="muted small sans">
        Batch {answer.batch}. At the command line: <code>npm run -s lengthbook -- completeness</code>
      </p>
    </main>
  );
}

function whereIn(text: string | string[] | undefined): Where | null {
  try {
    return text === undefined ? {} : typeof text === "string" ? parseWhere(text) : null;
  } catch (error) {
    if (error instanceof CohortError) return null;
    throw error;
  }
}

function CompletenessTable({ answer: { years, segments, items } }: { readonly answer: Completeness }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls" tabIndex={0} aria-label="How complete">
      <table className="data">
        <caption className="only-heard">Segments that have each item recorded, by audit year</caption>
        <thead>
          <tr>
            <th scope="col" className="start">
              Recorded
            </th>
            {years.map((year, i) => (
              <th key={year} scope="col">
                {year}
                <span className="under">of {segments[i]}</span>
              </th>
            ))}
          </tr>
        </thead>
        {(["before surgery", "operation and course", "after"] as const).map((group) => (
          <tbody key={group}>
            <tr>
              <th scope="rowgroup" colSpan={years.length + 1} className="start group-head">
                {group.charAt(0).toUpperCase() + group.slice(1)}
              </th>
            </tr>
            {items.filter((item) => item.group === group).map((item) => itemRow(item, segments))}
          </tbody>
        ))}
      </table>
    </section>
  );
}

function itemRow({ id, label, recorded }: CompletenessItem, segments: readonly number[]) {
  return (
    <tr key={id}>
      <th scope="row" className="start">
        {label}
      </th>
      {recorded.map((n, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a year's column has no other name, and never changes its place
        <td key={i}>
          {n}
          <span className="under">{percent(n, segments[i] ?? 0)}</span>
        </td>
      ))}
    </tr>
  );
}

const percent = (n: number, of: number) => (of === 0 ? "" : `${Math.round((100 * n) / of)} %`);
