import { conditionField, describeSplit, lowerFirst } from "@/lib/cohorts";
import { type Choice, Word } from "../_client/sentence";

/** Techniques are chosen for a patient, and are what a unit can change: they are offered first. */
export const techniqueSplits = [
  "deviceKind",
  "device",
  "entry",
  "osteotomyTechnique",
  "osteotomySite",
  "osteotomyOrientation",
  "canalVented",
  "reamedMinusNailMm:2",
  "blockingScrews",
  "arrangement",
  "releaseIliotibialBand",
  "releaseGastrocnemius",
  "releasePeronealNerve",
  "latency:5/8",
  "distraction-rate:0.75/1",
] as const;
const whoSplits = ["bone", "indication", "aetiology", "sex", "ageAtSurgeryYears:18", "growthPlates", "smoking"] as const;
const whenSplits = ["surgeryYear", "auditYear", "gainMm:30/50/80"] as const;

const offered = [...whoSplits, ...techniqueSplits, ...whenSplits].filter((text) => conditionField(text.split(":")[0] ?? "") !== undefined);

export function splitChoices(by: readonly string[]): readonly Choice[] {
  const own = by.join(",");
  const known: readonly string[] = offered;
  const more = own === "" || known.includes(own) ? [] : [{ value: own, text: describeSplit(by) }];
  return [{ value: "", text: "nothing" }, ...more, ...offered.map((text) => ({ value: text, text: describeSplit([text]) }))];
}

export function SplitWord({ by, comma = false }: { readonly by: readonly string[]; readonly comma?: boolean }) {
  return <Word name="by" label="Split by" value={by.join(",")} choices={splitChoices(by)} comma={comma} />;
}

export function fieldChoice(field: string): Choice {
  return { value: field, text: lowerFirst(conditionField(field)?.label ?? field) };
}
