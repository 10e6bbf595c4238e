import { ArrivedPart } from "./arrived-part";
import { CommentsPart } from "./comments-part";
import { FindingsPart } from "./findings-part";
import { gistOf } from "./gists";
import { KeptPart } from "./kept-part";
import { KeyPart } from "./key-part";
import { Part } from "./part";
import type { PartProps } from "./part-props";
import { isReached, type Step, steps, stepWords } from "./steps";
import { StrippedPart } from "./stripped-part";
import { UnderstoodPart } from "./understood-part";
import { WorkingLine } from "./working-line";

type Props = PartProps & { readonly open: Step; readonly goesOnAt: Step | null; readonly busy: boolean };

const parts: { readonly [S in Step]: (props: PartProps) => React.ReactNode } = {
  arrived: ArrivedPart,
  key: KeyPart,
  understood: UnderstoodPart,
  comments: CommentsPart,
  stripped: StrippedPart,
  findings: FindingsPart,
  kept: KeptPart,
};

/** The letter: each part a heading and the gist of what it came to, one of them open. */
export function Letter({ open, goesOnAt, busy, ...props }: Props) {
  const { state, store, goTo } = props;
  return (
    <>
      <h1>What does your file bring?</h1>
      <p className="answer">
        Names, numbers and dates are taken out here, in this tab. What is left is sent when you say so at the end, and not before.
      </p>
      {goesOnAt === null ? null : (
        <p className="said sans">
          The file stays with you: drop it here and you go on at <em>{stepWords[goesOnAt]}</em>. What this tab was told of its columns is
          still here.
        </p>
      )}
      <ol className="letter" aria-busy={busy}>
        {steps.map((step) => {
          const Inside = parts[step];
          return (
            <Part
              key={step}
              step={step}
              isOpen={step === open}
              isReached={isReached(step, state)}
              title={step === "kept" && state.receipt?.batch ? "What was kept" : stepWords[step]}
              gist={gistOf(step, state)}
              goTo={goTo}
            >
              {step === open ? (
                <>
                  <WorkingLine store={store} working={state.working} trouble={state.trouble} />
                  <Inside {...props} />
                </>
              ) : null}
            </Part>
          );
        })}
      </ol>
      <p className="only-heard" role="status">
        {state.spoken}
      </p>
    </>
  );
}
