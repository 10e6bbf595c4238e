/** Windows offered, days from the clock's start: middle and how far to each side (a unit may choose its own). */
export const followUpWindows = [
  { id: "3-months", label: "3 months", middle: 91, around: 28 },
  { id: "6-months", label: "6 months", middle: 183, around: 42 },
  { id: "12-months", label: "12 months", middle: 365, around: 91 },
  { id: "24-months", label: "24 months", middle: 731, around: 183 },
] as const;
export type FollowUpWindow = (typeof followUpWindows)[number];

export type WindowStatus = "seen" | "due" | "not-yet-due" | "dead" | "lost";

export type Followed = {
  /** Days from the clock's start on which the segment was seen. */
  readonly seenOn: readonly number[];
  /** Days from the clock's start to the closing date of the data, from the middle of the quarter of surgery. */
  readonly potentialDays: number;
  readonly diedOn: number | null;
  readonly lostOn: number | null;
};

/**
 * How a segment stands at a window: seen inside it; dead or lost before it opened; not yet due when it has not closed by the closing date;
 * due otherwise. The potential follow-up is known to the quarter only, so *due* can err by half a quarter.
 */
export function windowStatus(
  { seenOn, potentialDays, diedOn, lostOn }: Followed,
  window: { readonly middle: number; readonly around: number },
): WindowStatus {
  const [from, to] = [window.middle - window.around, window.middle + window.around];
  if (seenOn.some((day) => day >= from && day <= to)) return "seen";
  if (diedOn !== null && diedOn <= to) return "dead";
  if (lostOn !== null && lostOn <= to) return "lost";
  return potentialDays < to ? "not-yet-due" : "due";
}

/**
 * Observed over potential person-time. A person with the event is followed in full up to it.
 * Clark TG, Altman DG, De Stavola BL. Lancet 2002;359:1309-1310.
 * @throws RangeError when nobody could have been followed
 */
export function followUpCompleteness(
  persons: readonly { readonly observed: number; readonly potential: number; readonly event: boolean }[],
): {
  readonly observed: number;
  readonly potential: number;
  readonly share: number;
} {
  let [observed, potential] = [0, 0];
  for (const person of persons) {
    observed += Math.min(person.observed, person.potential);
    potential += person.event ? Math.min(person.observed, person.potential) : person.potential;
  }
  if (potential <= 0) throw new RangeError("followUpCompleteness requires potential follow-up above zero, received 0");
  return { observed, potential, share: observed / potential };
}
