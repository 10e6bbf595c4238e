import type { ReactNode } from "react";
import type { Told } from "@/lib/reports";
import { type MeasuredQuestion, tellMeasured } from "@/lib/reports";
import { registry } from "../../_data/registry";
import type { Asked } from "../../_page/asked";
import { type Choice, Sentence, Word } from "../_client/sentence";
import { type PlaceId, placeOf } from "../_places/places";
import { CohortWords, KeptWords } from "./asked";
import { openPlace } from "./open-place";
import { PlacePage } from "./place-page";
import { SplitWord } from "./split-word";

type Offered = Choice & { readonly units?: readonly string[] };
type Config = {
  readonly place: PlaceId;
  /** The measures of the place; the first is the usual one. */
  readonly measures: readonly [Offered, ...Offered[]];
  readonly label: string;
  readonly wouldStand: string;
  /** The words before the measure, and between it and the cohort. */
  readonly opening: string;
  readonly joining: string;
  readonly tell?: (from: Awaited<ReturnType<typeof registry>>, question: MeasuredQuestion) => Promise<Told>;
};

const unitsOffered = ["", "mm", "cm", "days", "months", "days/cm", "months/cm"] as const;

/** A place whose question is one measure of several: what it was, in whom, split by what. */
export async function measuredPlace(config: Config, searchParams: Promise<Asked>): Promise<ReactNode> {
  const ids = config.measures.map(({ value }) => value) as [string, ...string[]];
  const opened = await openPlace(config.place, searchParams, { measure: ids, unit: unitsOffered }, { wouldStand: config.wouldStand });
  if ("page" in opened) return opened.page;
  const { where, by, asOf, words } = opened.question;
  const told = await (config.tell ?? tellMeasured)(await registry(), { where, by, asOf, measure: words.measure });
  const unit = words.unit === "" ? undefined : words.unit;
  const sentence = (
    <Sentence action={placeOf(config.place).path}>
      {config.opening} <Word name="measure" label={config.label} value={words.measure} choices={config.measures} /> {config.joining}{" "}
      <CohortWords where={where} by={by} place={config.place} />, split by <SplitWord by={by} comma={unitsOf(told).length > 1} />
      <UnitWord told={told} {...(unit === undefined ? {} : { unit })} />
      <KeptWords where={where} asOf={asOf} />?
    </Sentence>
  );
  return <PlacePage told={told} where={where} {...(unit === undefined ? {} : { unit })} sentence={sentence} />;
}

const unitsOf = (told: Told) => told.figures[0]?.units ?? [];

/** Units are offered only where a figure can be read in several. */
function UnitWord({ told, unit }: { readonly told: Told; readonly unit?: string }) {
  const units = unitsOf(told);
  if (units.length < 2) return null;
  const shown = unit !== undefined && units.includes(unit) ? unit : (units[0] ?? "");
  return (
    <>
      {" "}
      in <Word name="unit" label="Unit" value={shown} choices={units.map((one) => ({ value: one, text: one }))} />
    </>
  );
}
