import type { HealingAnswer, MeasureEntry } from "@/lib/answers";
import { canonicalWhere } from "@/lib/cohorts";
import { measureChoices, rescueChoices, unitChoices } from "../_choices";
import { Sentence, Word } from "../_client/sentence";
import { CohortWords } from "../_place/asked";
import { SplitWord } from "../_place/split-word";
import type { OutcomesQuestion } from "../_question";

type Props = { readonly question: OutcomesQuestion; readonly answer: HealingAnswer; readonly clocks: readonly MeasureEntry[] };

/** The question as a sentence: filter, caption and methods line in one. */
export function QuestionSentence({ question, answer, clocks }: Props) {
  const { measure, by, rescue, unit, where, asOf } = question;
  const heals = answer.groups.length === 0 || answer.groups.some((group) => group.healed !== undefined);
  const readInDays = unit === "days/cm" || unit === "months/cm";
  const cohort = Object.keys(where).length === 0 ? null : canonicalWhere(where);
  return (
    <Sentence action="/outcomes">
      {answer.unit === "mm/day" ? "What" : "How long"} was{" "}
      <Word name="measure" label="Clock" value={measure} choices={measureChoices(clocks)} /> in{" "}
      <CohortWords where={where} by={by} place="healing" />, split by <SplitWord by={by} comma={heals || readInDays} />
      {heals ? (
        <>
          {" "}
          with healing <Word name="rescue" label="Healing" value={rescue} choices={rescueChoices} comma={readInDays} />
        </>
      ) : null}
      {readInDays ? (
        <>
          {" "}
          in <Word name="unit" label="Unit" value={unit === "months/cm" ? "months" : "days"} choices={unitChoices} />
        </>
      ) : null}
      {asOf === null ? null : `, as of batch ${asOf}`}?{cohort === null ? null : <input type="hidden" name="where" value={cohort} />}
      {asOf === null ? null : <input type="hidden" name="asOf" value={asOf} />}
    </Sentence>
  );
}
