import { type KaplanMeier, type KaplanMeierInput, kaplanMeier } from "./kaplan-meier";
import { requireTimeRows } from "./survival/require-rows";

/**
 * Median follow-up: Kaplan–Meier with the parts exchanged, being censored is the event and the event censors the follow-up.
 * Schemper, Smith 1996, Control Clin Trials 17:343-346.
 * @throws RangeError, TypeError as `kaplanMeier`
 * @example reverseKaplanMeier({ times: [1, 2, 3, 4, 5], event: [1, 0, 0, 1, 0] }).estimate // => 4
 */
export function reverseKaplanMeier(input: KaplanMeierInput): KaplanMeier {
  requireTimeRows("reverseKaplanMeier", input);
  const event = Array.from(input.event, (code) => 1 - code);
  const curve = kaplanMeier({ ...input, event });
  return {
    ...curve,
    method: `reverse ${curve.method}`,
    convention: "at the same time ends of follow-up come before events, as R’s survfit with the event exchanged",
    notes: curve.notes.map((note) => (note.code === "not-reached" ? { ...note, what: "The median follow-up" } : note)),
  };
}
