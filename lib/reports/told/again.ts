import { tellComplications } from "../outcomes/complications";
import { tellDaysAtEqualGain } from "../outcomes/days-at-equal-gain";
import { tellDistractionCourse } from "../outcomes/distraction";
import { tellFollowUp } from "../outcomes/follow-up";
import { tellGainAgainstPlan } from "../outcomes/gain-against-plan";
import { tellHealingCurve } from "../outcomes/healing-curve";
import { tellProportion } from "../outcomes/proportion";
import type { PlaceQuestion, Registry, Where } from "./question";
import type { Told } from "./told";

type Kept = {
  readonly cohort: Where;
  readonly measure: string;
  readonly by: readonly string[];
  readonly options: Readonly<Record<string, string | number | boolean | null>>;
  readonly state: { readonly batch: number };
  readonly version: string;
};
type Again = (registry: Registry, question: PlaceQuestion, kept: Kept) => Promise<Told>;

/** Which place a kept question belongs to, by the measure under which it was kept. */
const places: readonly (readonly [measure: RegExp, tell: Again])[] = [
  [
    /^(days-against-gain|log-normal-fit)\./,
    (registry, question, { measure, options }) =>
      tellDaysAtEqualGain(registry, { ...question, ...landmarkIn(options), measure: afterPoint(measure) }),
  ],
  [
    /^time-to-consolidation\.curve$/,
    (registry, question, { options }) =>
      tellHealingCurve(registry, {
        ...question,
        ...landmarkIn(options),
        rescue: options.rescue === "competing" ? "competing" : "counted",
        films: options.films === "between" ? "between" : "showed",
        test: options.test === true,
      }),
  ],
  [
    /^gain-error\.against-plan$/,
    (registry, question, { options: { plan, toleranceMm } }) =>
      tellGainAgainstPlan(registry, {
        ...question,
        plan: plan === "plannedGainFinalMm" ? plan : "plannedGainMm",
        toleranceMm: typeof toleranceMm === "number" ? toleranceMm : null,
      }),
  ],
  [
    /^proportion-[a-z-]+\.before-after$/,
    (registry, question, { measure }) =>
      // the measure was kept by the place itself, which knows no other
      tellProportion(registry, {
        ...question,
        measure: beforePoint(measure) as Parameters<typeof tellProportion>[1]["measure"],
        norm: null,
      }),
  ],
  [/^distraction-course$/, (registry, question) => tellDistractionCourse(registry, question)],
  [/^follow-up-completeness$/, (registry, question) => tellFollowUp(registry, question)],
  [
    /^complication-matrix$/,
    (registry, question, { options }) =>
      tellComplications(registry, {
        ...question,
        scheme: String(options.scheme),
        endRule: options.endRule === "implant-removal" || options.endRule === "twelve-months" ? options.endRule : "healed-and-bearing",
        withoutPinSites: options.withoutPinSites === true,
      }),
  ],
];

/** A place again, from a result reference of its own; `null` when the reference is of something else, or of nothing kept here. */
export async function tellAgain(registry: Registry, stamp: string): Promise<{ readonly told: Told; readonly version: string } | null> {
  const text = await registry.findQuestion(stamp);
  if (text === null) return null;
  const kept = JSON.parse(text) as Kept;
  const place = places.find(([measure]) => measure.test(kept.measure));
  if (!place) return null;
  const told = await place[1](registry, { where: kept.cohort, by: kept.by, asOf: kept.state.batch }, kept);
  return { told, version: kept.version };
}

const landmarkIn = ({ landmark }: Kept["options"]) => (typeof landmark === "number" ? { landmark } : {});
const afterPoint = (text: string) => text.slice(text.indexOf(".") + 1);
const beforePoint = (text: string) => text.slice(0, text.indexOf("."));
