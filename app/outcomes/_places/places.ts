/** The places of Outcomes, each a question, in the order in which they stand in their line. */
export const places = [
  { id: "healing", name: "Healing", path: "/outcomes" },
  { id: "days-at-equal-gain", name: "Equal gain", path: "/outcomes/days-at-equal-gain" },
  { id: "healing-curve", name: "Curve", path: "/outcomes/healing-curve" },
  { id: "distraction", name: "Distraction", path: "/outcomes/distraction" },
  { id: "gain-against-plan", name: "Plan", path: "/outcomes/gain-against-plan" },
  { id: "complications", name: "Complications", path: "/outcomes/complications" },
  { id: "incidence", name: "Incidence", path: "/outcomes/incidence" },
  { id: "proportion", name: "Proportion", path: "/outcomes/proportion" },
  { id: "stature", name: "Stature", path: "/outcomes/stature" },
  { id: "alignment", name: "Alignment", path: "/outcomes/alignment" },
  { id: "motion", name: "Motion", path: "/outcomes/motion" },
  { id: "scores", name: "Scores", path: "/outcomes/scores" },
  { id: "follow-up", name: "Follow-up", path: "/outcomes/follow-up" },
  { id: "side-by-side", name: "Side by side", path: "/outcomes/side-by-side" },
] as const;

export type Place = (typeof places)[number];
export type PlaceId = Place["id"];

/** @throws RangeError when no place has the id */
export function placeOf(id: PlaceId): Place {
  const found = places.find((place) => place.id === id);
  if (!found) throw new RangeError(`placeOf requires a place of Outcomes, received ${id}`);
  return found;
}
