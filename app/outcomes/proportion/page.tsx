import type { Metadata } from "next";
import { tellProportion } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Proportion" };

const proportions = [
  { value: "proportion-tibia-femur", text: "tibia to femur" },
  { value: "proportion-sitting-height", text: "sitting height to stature" },
  { value: "proportion-leg", text: "leg length to stature" },
  { value: "proportion-span", text: "arm span to stature" },
  { value: "proportion-left-right", text: "left to right" },
] as const;
const norms = [
  { value: "none", text: "no norm" },
  { value: "standing-film-adults", text: "adults on a standing film" },
  { value: "dry-bone-adults", text: "adults’ dry bones" },
  { value: "army-adults", text: "adults of an army sample" },
] as const;
const spec = {
  measure: ["proportion-tibia-femur", "proportion-sitting-height", "proportion-leg", "proportion-span", "proportion-left-right"],
  norm: ["none", "standing-film-adults", "dry-bone-adults", "army-adults"],
} as const;

export default async function Proportion({ searchParams }: PageAsked) {
  const opened = await openPlace("proportion", searchParams, spec, {
    wouldStand: "how proportions were before and after, a line for each patient, and what the gains alone predict",
  });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const norm = words.norm === "none" ? null : words.norm;
  const told = await tellProportion(await registry(), { where, by, asOf, measure: words.measure, norm });
  const sentence = (
    <Sentence action={placeOf("proportion").path}>
      How did <Word name="measure" label="Proportion" value={words.measure} choices={proportions} /> change in{" "}
      <CohortWords where={where} by={by} place="proportion" />, split by <SplitWord by={by} comma /> beside{" "}
      <Word name="norm" label="Norm" value={words.norm} choices={norms} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} sentence={sentence} />;
}
