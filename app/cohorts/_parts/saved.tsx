import { canonicalWhere, describeWhere, parseWhere, type Where } from "@/lib/cohorts";
import { addressOf } from "../_address";
import type { CohortQuestion } from "../_question";

type SavedCohort = { readonly name: string; readonly where: string };
type Props = { readonly question: CohortQuestion; readonly cohorts: readonly SavedCohort[]; readonly unnamed: boolean };

/** A cohort under a name: for Outcomes, for the command line, for next year. */
export function Saved({ question, cohorts, unnamed }: Props) {
  const { where, taken, saved } = question;
  const json = canonicalWhere(where);
  return (
    <section aria-labelledby="saved">
      <h2 id="saved">Under a name</h2>
      {saved === null ? null : (
        <p className="said" role="status">
          Saved as <strong>{saved}</strong>. It can be named in side by side, and with <code>--cohort {saved}</code>.
        </p>
      )}
      {unnamed ? (
        <p className="said warm">A name needs letters or digits, at most 60, and is no person’s name or number. Nothing was saved.</p>
      ) : null}
      {taken === null ? (
        <form action="/cohorts/save" method="post" className="doings sans">
          <input type="hidden" name="where" value={json} />
          <label>
            Name <input name="name" required maxLength={80} size={28} autoComplete="off" />
          </label>
          <button type="submit">Save this cohort</button>
          <span className="muted small">It stands in addresses and captions: no person’s name or number.</span>
        </form>
      ) : (
        <Taken name={taken} where={json} cohorts={cohorts} />
      )}
      <List cohorts={cohorts} />
      <p className="sans">
        The address of this page is the cohort: send it, and whoever opens it on this registry sees the same. At the command line:{" "}
        <code>{`--cohort '${json.replaceAll("'", "'\\''")}'`}</code>
      </p>
    </section>
  );
}

function Taken({ name, where, cohorts }: { readonly name: string; readonly where: string; readonly cohorts: readonly SavedCohort[] }) {
  const held = cohorts.find((one) => one.name === name);
  return (
    <form action="/cohorts/save" method="post" className="said warm">
      <p>
        <strong>{name}</strong> is the name of another cohort: {held ? describeWhere(readOf(held)) : "not held any more"}. Give the name to
        this one instead?
      </p>
      <input type="hidden" name="where" value={where} />
      <input type="hidden" name="name" value={name} />
      <input type="hidden" name="replace" value="yes" />
      <p className="doings">
        <button type="submit">Give it the name</button>{" "}
        <a href={addressOf("/cohorts", { where: parseWhere(where) })}>Choose another name</a>
      </p>
    </form>
  );
}

function List({ cohorts }: { readonly cohorts: readonly SavedCohort[] }) {
  if (cohorts.length === 0) return <p className="muted">No cohort is saved yet.</p>;
  return (
    <ul className="saved-cohorts">
      {cohorts.map((one) => (
        <li key={one.name}>
          <a href={addressOf("/cohorts", { where: readOf(one) })}>{one.name}</a>: {describeWhere(readOf(one))}
        </li>
      ))}
    </ul>
  );
}

function readOf({ where }: SavedCohort): Where {
  return parseWhere(where);
}
