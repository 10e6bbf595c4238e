import type { Metadata } from "next";
import { tellGainAgainstPlan } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { lengthUnitChoices, lengthUnits } from "../_place/units";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Gain against plan" };

const tolerances = [
  { value: "unit", text: "the unit’s own tolerance" },
  { value: "5", text: "5 mm" },
  { value: "10", text: "10 mm" },
  { value: "15", text: "15 mm" },
] as const;
const plans = [
  { value: "plannedGainMm", text: "planned at start" },
  { value: "plannedGainFinalMm", text: "of the final plan" },
] as const;
const spec = {
  tolerance: ["unit", "5", "10", "15"],
  plan: ["plannedGainMm", "plannedGainFinalMm"],
  unit: lengthUnits,
} as const;

export default async function GainAgainstPlan({ searchParams }: PageAsked) {
  const opened = await openPlace("gain-against-plan", searchParams, spec, {
    wouldStand: "what was gained against what was planned: each segment a mark beside the line of equality, early stops among them",
  });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const toleranceMm = words.tolerance === "unit" ? null : Number(words.tolerance);
  const told = await tellGainAgainstPlan(await registry(), { where, by, asOf, toleranceMm, plan: words.plan });
  const sentence = (
    <Sentence action={placeOf("gain-against-plan").path}>
      How often did the gain come within <Word name="tolerance" label="Tolerance" value={words.tolerance} choices={tolerances} /> of the
      length <Word name="plan" label="Plan" value={words.plan} choices={plans} /> in{" "}
      <CohortWords where={where} by={by} place="gain-against-plan" />, split by <SplitWord by={by} comma /> in{" "}
      <Word name="unit" label="Unit" value={words.unit} choices={lengthUnitChoices} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} unit={words.unit} sentence={sentence} />;
}
