import type { IntakeState } from "./state";

/** The parts of the letter, in their order; the name stands in the address. */
export const steps = ["arrived", "key", "understood", "comments", "stripped", "findings", "kept"] as const;
export type Step = (typeof steps)[number];

export const stepWords: Readonly<Record<Step, string>> = {
  arrived: "What arrived",
  key: "The key",
  understood: "What we understood",
  comments: "What the comments say",
  stripped: "What we leave out",
  findings: "What needs your word",
  kept: "What will be kept",
};

export function stepOf(text: string | null): Step {
  return steps.find((step) => step === text) ?? "arrived";
}

/** Whether a part can be written yet: each needs what those before it gave. */
export function isReached(step: Step, { arrived, key, view, receipt }: IntakeState): boolean {
  if (step === "arrived") return true;
  const readable = arrived.some(({ sheets }) => sheets.length > 0);
  if (step === "key") return readable;
  // a recovery code is seen and put away before anything else, since it is shown this once
  const isOpen = key.is === "open" && key.recoveryCode === null;
  if (step === "understood") return readable && isOpen;
  const read = readable && isOpen && view?.stage === "rows";
  if (step === "comments") return read && view.comments.length > 0;
  if (step === "kept" && receipt !== null) return true;
  return read;
}

/** Where the letter stands open: at the part asked for, or the last one before it that can be written. */
export function openStep(wanted: Step, state: IntakeState): Step {
  const upTo = steps.slice(0, steps.indexOf(wanted) + 1);
  return upTo.findLast((step) => isReached(step, state)) ?? "arrived";
}

export function stepAfter(step: Step, state: IntakeState): Step | null {
  const later = steps.slice(steps.indexOf(step) + 1);
  const isNeedless = (next: Step) =>
    (next === "comments" && (state.view?.comments.length ?? 0) === 0) ||
    (next === "key" && state.key.is === "open" && state.key.recoveryCode === null);
  return later.find((next) => !isNeedless(next)) ?? null;
}

export function stepBefore(step: Step, state: IntakeState): Step | null {
  return steps.slice(0, steps.indexOf(step)).findLast((earlier) => isReached(earlier, state)) ?? null;
}
