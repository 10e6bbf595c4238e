import type { Metadata } from "next";
import { wordsOfCode } from "@/lib/codebook";
import { tellMeasured } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Scores" };

const measures = [
  { value: "score-change", text: "change" },
  { value: "score-responders", text: "improve by what matters" },
] as const;

export default async function Scores({ searchParams }: PageAsked) {
  const { scores } = await (await registry()).settings();
  const [first = "", ...more] = scores.map(({ code }) => code);
  const spec = { measure: ["score-change", "score-responders"], score: [first, ...more] } as const;
  const opened = await openPlace("scores", searchParams, spec, {
    wouldStand: "how patients’ own scores changed, and in how many by at least what matters to a patient",
  });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const told = await tellMeasured(await registry(), {
    where,
    by,
    asOf,
    measure: words.measure,
    score: words.score === "" ? null : words.score,
  });
  const choices = spec.score.map((code) => ({ value: code, text: code === "" ? "each score held" : wordsOfCode(code) }));
  const sentence = (
    <Sentence action={placeOf("scores").path}>
      How did <Word name="score" label="Score" value={words.score} choices={choices} />{" "}
      <Word name="measure" label="Measure" value={words.measure} choices={measures} /> in{" "}
      <CohortWords where={where} by={by} place="scores" />, split by <SplitWord by={by} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} sentence={sentence} />;
}
