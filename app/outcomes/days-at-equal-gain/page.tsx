import type { Metadata } from "next";
import { tellDaysAtEqualGain } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { landmarkChoices, landmarkOf, landmarks } from "../_place/landmarks";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { timeUnitChoices, timeUnits } from "../_place/units";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Days at equal gain" };

const clocks = [
  { value: "surgery-to-consolidation", text: "surgery to consolidation" },
  { value: "distraction-to-consolidation", text: "distraction start to consolidation" },
  { value: "maturation", text: "distraction end to consolidation" },
  { value: "treatment", text: "surgery to end of treatment" },
] as const;
const spec = {
  measure: ["surgery-to-consolidation", "distraction-to-consolidation", "maturation", "treatment"],
  landmark: landmarks,
  unit: timeUnits,
} as const;

export default async function DaysAtEqualGain({ searchParams }: PageAsked) {
  const opened = await openPlace("days-at-equal-gain", searchParams, spec, {
    wouldStand:
      "how many days bones took for the same gain: each segment a mark, each group a line, and how groups differ once gains are equal",
  });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const landmark = landmarkOf(words.landmark);
  const told = await tellDaysAtEqualGain(await registry(), { where, by, asOf, measure: words.measure, ...landmark });
  const sentence = (
    <Sentence action={placeOf("days-at-equal-gain").path}>
      At equal gain, how long was <Word name="measure" label="Clock" value={words.measure} choices={clocks} /> in{" "}
      <CohortWords where={where} by={by} place="days-at-equal-gain" />, split by <SplitWord by={by} comma /> counted from{" "}
      <Word name="landmark" label="Counted from" value={words.landmark} choices={landmarkChoices} comma /> in{" "}
      <Word name="unit" label="Unit" value={words.unit} choices={timeUnitChoices} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} unit={words.unit} sentence={sentence} />;
}
