import type { CohortGroup } from "@/lib/answers";
import { describeSplit, groupWhere } from "@/lib/cohorts";
import { Sentence, Word } from "../../outcomes/_client/sentence";
import { KeptWords } from "../../outcomes/_place/asked";
import { splitChoices } from "../../outcomes/_place/split-word";
import { addressOf } from "../_address";
import type { CohortQuestion } from "../_question";

/** The cohort in groups, by one field or two; each group is a cohort itself. */
export function Split({ question, groups }: { readonly question: CohortQuestion; readonly groups: readonly CohortGroup[] }) {
  const { where, by, asOf, measure, place } = question;
  const [first, second] = by;
  return (
    <section aria-labelledby="groups">
      <h2 id="groups">In groups</h2>
      <Sentence action="/cohorts">
        Split by <Word name="by" label="Split by" value={first ?? ""} choices={splitChoices(first === undefined ? [] : [first])} />
        {first === undefined ? null : (
          <>
            {" "}
            and by <Word name="by2" label="And by" value={second ?? ""} choices={splitChoices(second === undefined ? [] : [second])} />
          </>
        )}
        <KeptWords where={where} asOf={asOf} />
        <input type="hidden" name="measure" value={measure} />
        {place === null ? null : <input type="hidden" name="for" value={place} />}
      </Sentence>
      {by.length === 0 ? null : <Groups {...{ question, groups }} />}
    </section>
  );
}

function Groups({ question: { where, by }, groups }: { readonly question: CohortQuestion; readonly groups: readonly CohortGroup[] }) {
  const caption = `Groups by ${describeSplit(by)}`;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard to be scrolled
    <section className="scrolls" tabIndex={0} aria-label={caption}>
      <table className="data">
        <caption className="only-heard">{caption}</caption>
        <thead>
          <tr>
            <th scope="col" className="start">
              Group
            </th>
            <th scope="col">Segments</th>
            <th scope="col">Patients</th>
            <th scope="col" className="start not-printed">
              These alone
            </th>
          </tr>
        </thead>
        <tbody>
          {groups.map((group) => (
            <tr key={group.label}>
              <th scope="row" className="start">
                {group.label}
              </th>
              <td>{group.segments}</td>
              <td>{group.patients}</td>
              <td className="start not-printed">
                <a href={addressOf("/cohorts", { where: groupWhere(where, by, group.key) })} aria-label={`${group.label} as a cohort`}>
                  as a cohort
                </a>
                {", "}
                <a
                  href={addressOf("/outcomes", { where: groupWhere(where, by, group.key) })}
                  aria-label={`${group.label}: how they healed`}
                >
                  how they healed
                </a>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small muted sans">A patient with segments in several groups counts in each.</p>
    </section>
  );
}
