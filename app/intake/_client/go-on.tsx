import type { ReactNode } from "react";
import type { IntakeState } from "./state";
import { isReached, type Step, stepAfter, stepBefore, stepWords } from "./steps";

type Props = {
  readonly from: Step;
  readonly state: IntakeState;
  readonly goTo: (step: Step) => void;
  /** Why it can't go on yet. */
  readonly waits?: ReactNode;
};

/** The way on and the way back, each named by the part it leads to. */
export function GoOn({ from, state, goTo, waits = null }: Props) {
  const [back, next] = [stepBefore(from, state), stepAfter(from, state)];
  const may = next !== null && isReached(next, state) && waits === null;
  return (
    <div className="doings sans go-on">
      {next === null || !may ? null : (
        <button type="button" className="first" onClick={() => goTo(next)}>
          Go on: {stepWords[next].toLowerCase()}
        </button>
      )}
      {back === null ? null : (
        <button type="button" onClick={() => goTo(back)}>
          Back: {stepWords[back].toLowerCase()}
        </button>
      )}
      {waits === null ? null : <span className="muted">{waits}</span>}
    </div>
  );
}
