import type { MeasureEntry } from "@/lib/answers";
import type { Where } from "@/lib/cohorts";
import type { Asked } from "../_page/asked";
import { type Refuse, readBatch, readBy, readWhere, type Trouble, textOf } from "../outcomes/_address/pieces";
import { type PlaceId, places } from "../outcomes/_places/places";

export type CohortQuestion = {
  readonly where: Where;
  readonly by: readonly string[];
  readonly asOf: number | null;
  /** For what the flow goes on to the analysed. */
  readonly measure: string;
  /** The place of Outcomes that asked, and to which one goes back. */
  readonly place: PlaceId | null;
  /** The name under which the cohort was just saved, or the one that was already given to another. */
  readonly saved: string | null;
  readonly taken: string | null;
};

const usualMeasure = "surgery-to-consolidation";
const known = ["where", "by", "by2", "asOf", "measure", "for", "saved", "taken", "unnamed"];

/** Reads the address. The address is the cohort. */
export function readCohort(
  asked: Asked,
  newestBatch: number,
  list: readonly MeasureEntry[],
): { readonly question: CohortQuestion } | { readonly troubles: readonly Trouble[] } {
  const troubles: Trouble[] = [];
  const refuse: Refuse = (parameter, expected) => void troubles.push({ parameter, expected });
  for (const name of Object.keys(asked)) if (!known.includes(name)) refuse("a piece with an unknown name", `one of ${known.join(", ")}`);
  const text = (name: string) => textOf(asked[name], () => refuse(name, "to be given once"));
  const measure = text("measure") ?? usualMeasure;
  if (!list.some(({ id }) => id === measure)) refuse("measure", "an id of the list of measures, such as surgery-to-consolidation");
  const place = places.find(({ id }) => id === text("for"))?.id ?? null;
  if (place === null && text("for") !== null) refuse("for", "a place of Outcomes");
  const splits = [text("by"), text("by2")].filter((one) => one !== null).join(",");
  const question = {
    where: readWhere(text("where"), refuse),
    by: readBy(splits === "" ? null : splits, refuse),
    asOf: readBatch(text("asOf"), newestBatch, refuse),
    measure,
    place,
    saved: nameOf(text("saved")),
    taken: nameOf(text("taken")),
  };
  return troubles.length > 0 ? { troubles } : { question };
}

/** A name as cohorts have it; anything else in the address is no name and is not shown. */
function nameOf(text: string | null): string | null {
  return text !== null && /^[0-9a-z-]{1,60}$/.test(text) ? text : null;
}
