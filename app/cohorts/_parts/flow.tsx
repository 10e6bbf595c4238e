import type { MeasureEntry } from "@/lib/answers";
import type { ToldFlow } from "@/lib/reports";
import { Sentence, Word } from "../../outcomes/_client/sentence";
import { KeptWords } from "../../outcomes/_place/asked";
import { FigureAndNumbers } from "../../outcomes/_place/place-page";
import type { CohortQuestion } from "../_question";

type Props = { readonly told: ToldFlow; readonly question: CohortQuestion; readonly list: readonly MeasureEntry[] };

/** From the registry to the cohort, and on to what a measure can use. */
export function Flow({ told, question, list }: Props) {
  const choices = list.map(({ id, title }) => ({ value: id, text: title.toLowerCase() }));
  const { where, by, asOf, measure, place } = question;
  return (
    <section aria-labelledby="flow">
      <h2 id="flow">From the registry to the analysed</h2>
      <Sentence action="/cohorts">
        Who is left for <Word name="measure" label="Analysed for" value={measure} choices={choices} />
        <KeptWords where={where} asOf={asOf} />?{by.length === 0 ? null : <input type="hidden" name="by" value={by.join(",")} />}
        {place === null ? null : <input type="hidden" name="for" value={place} />}
      </Sentence>
      <FigureAndNumbers figure={told.figure} stamp={told.answer.stamp} where={where} />
    </section>
  );
}
