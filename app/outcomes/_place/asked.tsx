import { canonicalWhere, describeWhere, type Where } from "@/lib/cohorts";
import type { PlaceId } from "../_places/places";
import { cohortsPath } from "./cohorts-path";

type Kept = { readonly where: Where; readonly asOf: number | null };

/** The cohort in words: where it can be changed is one step away. */
export function CohortWords({ where, by, place }: { readonly where: Where; readonly by: readonly string[]; readonly place: PlaceId }) {
  return (
    <a className="cohort" href={cohortsPath(where, by, place)}>
      {describeWhere(where)}
    </a>
  );
}

/** What the sentence asks without a word of its own: the batch in words, the cohort and the batch as they stand in the address. */
export function KeptWords({ where, asOf }: Kept) {
  const cohort = Object.keys(where).length === 0 ? null : canonicalWhere(where);
  return (
    <>
      {asOf === null ? null : `, as of batch ${asOf}`}
      {cohort === null ? null : <input type="hidden" name="where" value={cohort} />}
      {asOf === null ? null : <input type="hidden" name="asOf" value={asOf} />}
    </>
  );
}
