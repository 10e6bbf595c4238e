import type { IntakeState } from "./state";
import type { Step } from "./steps";
import type { IntakeStore } from "./store";

export type PartProps = {
  readonly store: IntakeStore;
  readonly state: IntakeState;
  readonly goTo: (step: Step) => void;
  /** To a part, unless the address already asks for one beyond it. */
  readonly goUpTo: (step: Step) => void;
};
