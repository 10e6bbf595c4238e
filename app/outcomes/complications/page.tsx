import type { Metadata } from "next";
import { schemeList } from "@/lib/answers";
import { tellComplications } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { PageAsked } from "../../_page/asked";
import { type Choice, Sentence, Word } from "../_client/sentence";
import { CohortWords, KeptWords } from "../_place/asked";
import { openPlace } from "../_place/open-place";
import { PlacePage } from "../_place/place-page";
import { SplitWord } from "../_place/split-word";
import { placeOf } from "../_places/places";

export const metadata: Metadata = { title: "Complications" };

const schemes: readonly Choice[] = schemeList().map(({ id, title }) => ({ value: id, text: title.toLowerCase() }));
const ends: readonly Choice[] = [
  { value: "healed-and-bearing", text: "healing and full weight bearing" },
  { value: "implant-removal", text: "removal of the implant" },
  { value: "twelve-months", text: "twelve months" },
];
const pinSites: readonly Choice[] = [
  { value: "counted", text: "counted" },
  { value: "left-out", text: "left out" },
];
const usualScheme = "severity";
const spec = {
  scheme: [usualScheme, ...schemes.map(({ value }) => value).filter((id) => id !== usualScheme)],
  end: ["healed-and-bearing", "implant-removal", "twelve-months"],
  pins: ["counted", "left-out"],
} as const satisfies Record<string, readonly [string, ...string[]]>;

export default async function Complications({ searchParams }: PageAsked) {
  const opened = await openPlace("complications", searchParams, spec, {
    wouldStand: "which complications there were, of what class, in how many segments of those whose events were looked for",
  });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const told = await tellComplications(await registry(), {
    where,
    by,
    asOf,
    scheme: words.scheme,
    endRule: words.end,
    withoutPinSites: words.pins === "left-out",
  });
  const sentence = (
    <Sentence action={placeOf("complications").path}>
      How many complications, classed by <Word name="scheme" label="Scheme" value={words.scheme} choices={schemes} comma /> had{" "}
      <CohortWords where={where} by={by} place="complications" />, split by <SplitWord by={by} comma /> with treatment ending at{" "}
      <Word name="end" label="End of treatment" value={words.end} choices={ends} /> and pin-site infections{" "}
      <Word name="pins" label="Pin-site infections" value={words.pins} choices={pinSites} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} sentence={sentence} />;
}
