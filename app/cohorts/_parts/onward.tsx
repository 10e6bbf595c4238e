import { describeSplit } from "@/lib/cohorts";
import { places } from "../../outcomes/_places/places";
import { addressOf } from "../_address";
import type { CohortQuestion } from "../_question";

/** What to do next with a cohort: ask Outcomes about it. The place that one came from stands first. */
export function Onward({ question: { where, by, asOf, place } }: { readonly question: CohortQuestion }) {
  const back = places.find(({ id }) => id === place);
  const more: Readonly<Record<string, string>> = asOf === null ? {} : { asOf: String(asOf) };
  const address = (path: string) => addressOf(path, { where, by, more });
  const split = by.length === 0 ? "" : `, split by ${describeSplit(by)}`;
  return (
    <section aria-labelledby="onward" className="not-printed">
      <h2 id="onward">What came of it</h2>
      {back === undefined ? null : (
        <p>
          <a className="button" href={address(back.path)}>
            Back to {back.name.toLowerCase()} with this cohort
          </a>
        </p>
      )}
      <p>
        Ask about these segments{split}:{" "}
        {places.map((one, i) => (
          <span key={one.id}>
            {i === 0 ? "" : ", "}
            <a href={address(one.path)}>{one.name.toLowerCase()}</a>
          </span>
        ))}
        .
      </p>
    </section>
  );
}
