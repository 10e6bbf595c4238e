import type { Metadata } from "next";
import { tellIncidence } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { timeUnitChoices, timeUnits } from "../_place/units";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Incidence over time" };

const events = [
  { value: "complication-return-to-theatre", text: "an unplanned return to theatre" },
  { value: "complication-incidence", text: "a first complication" },
] as const;
const pinSites = [
  { value: "counted", text: "counted" },
  { value: "left-out", text: "left out" },
] as const;
const spec = {
  measure: ["complication-return-to-theatre", "complication-incidence"],
  pins: ["counted", "left-out"],
  unit: timeUnits,
} as const;

export default async function Incidence({ searchParams }: PageAsked) {
  const opened = await openPlace("incidence", searchParams, spec, {
    wouldStand: "how many had returned to theatre by each day, death competing and a planned removal ending the time at risk",
  });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const question = { where, by, asOf, measure: words.measure, withoutPinSites: words.pins === "left-out" };
  const told = await tellIncidence(await registry(), question);
  const sentence = (
    <Sentence action={placeOf("incidence").path}>
      By which day had <Word name="measure" label="Event" value={words.measure} choices={events} /> come to{" "}
      <CohortWords where={where} by={by} place="incidence" />, split by <SplitWord by={by} comma /> with pin-site infections{" "}
      <Word name="pins" label="Pin-site infections" value={words.pins} choices={pinSites} comma /> in{" "}
      <Word name="unit" label="Unit" value={words.unit} choices={timeUnitChoices} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} unit={words.unit} sentence={sentence} />;
}
