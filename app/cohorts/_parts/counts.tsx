import type { CohortFlowAnswer } from "@/lib/answers";
import { countedIn, grouped } from "@/lib/charts";
import { noBreak } from "../../_page/no-break";

/** Who is in it, of all that are held. */
export function Counts({ flow }: { readonly flow: CohortFlowAnswer }) {
  const [all] = flow.lines;
  const analysed = flow.lines.at(-1);
  const { segments, patients } = flow;
  const whole = all ? countedIn(all.segments, all.patients) : "nothing";
  if (segments === 0)
    return (
      <p className="answer number">
        {noBreak(
          `Nobody is in this cohort: each condition, and what it leaves out, stands below. Of ${whole} in the registry none is left.`,
        )}
      </p>
    );
  const used =
    analysed && analysed.segments < segments
      ? ` ${grouped(analysed.segments)} of them can be analysed for ${flow.definition.title.toLowerCase()}.`
      : "";
  return (
    <p className="answer number" role="status">
      {noBreak(`${countedIn(segments, patients)}, of ${whole} in the registry.${used}`)}
    </p>
  );
}
