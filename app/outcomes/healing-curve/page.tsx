import type { Metadata } from "next";
import { gainBands } from "@/lib/answers";
import { tellHealingCurve } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { filmsChoices, rescueChoices, testChoices } from "../_choices";
import { Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { landmarkChoices, landmarkOf, landmarks } from "../_place/landmarks";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { timeUnitChoices, timeUnits } from "../_place/units";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Healing curve" };

const spec = {
  rescue: ["counted", "competing"],
  films: ["showed", "between"],
  landmark: landmarks,
  test: ["no", "yes"],
  unit: timeUnits,
} as const;

export default async function HealingCurve({ searchParams }: PageAsked) {
  const opened = await openPlace("healing-curve", searchParams, spec, {
    usualBy: [gainBands],
    wouldStand: "how many bones had healed by each day: a curve for each band of gain, the unhealed counted up to their last film",
  });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const landmark = landmarkOf(words.landmark);
  const told = await tellHealingCurve(await registry(), {
    where,
    by,
    asOf,
    rescue: words.rescue,
    films: words.films,
    test: words.test === "yes",
    ...landmark,
  });
  const sentence = (
    <Sentence action={placeOf("healing-curve").path}>
      What share had healed by which day in <CohortWords where={where} by={by} place="healing-curve" />, split by{" "}
      <SplitWord by={by} comma /> with healing <Word name="rescue" label="Healing" value={words.rescue} choices={rescueChoices} comma />{" "}
      dated <Word name="films" label="Films" value={words.films} choices={filmsChoices} comma /> counted from{" "}
      <Word name="landmark" label="Counted from" value={words.landmark} choices={landmarkChoices} comma /> p value{" "}
      <Word name="test" label="p value" value={words.test} choices={testChoices} comma /> in{" "}
      <Word name="unit" label="Unit" value={words.unit} choices={timeUnitChoices} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} unit={words.unit} sentence={sentence} />;
}
