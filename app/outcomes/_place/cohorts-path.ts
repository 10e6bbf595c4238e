import { canonicalWhere, type Where } from "@/lib/cohorts";
import type { PlaceId } from "../_places/places";

/** Where a question's cohort is changed; from there the way leads back to the place. */
export function cohortsPath(where: Where, by: readonly string[], place: PlaceId): string {
  const asked = new URLSearchParams();
  if (Object.keys(where).length > 0) asked.set("where", canonicalWhere(where));
  if (by.length > 0) asked.set("by", by.join(","));
  asked.set("for", place);
  return `/cohorts?${asked}`;
}
