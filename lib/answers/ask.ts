import type { Where } from "@/lib/cohorts";
import { complicationMeasures, type Denominator, type EndRule, type Rescue } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { complications } from "./complications/complications";
import { healing } from "./healing/healing";
import { isClock } from "./measures/clocks";
import { measure } from "./measures/measure";
import type { HealingAnswer, MeasureAnswer } from "./types";

/** Any measure by its id, with what else was chosen; what doesn't apply to the measure is left aside. */
export type AnyQuestion = {
  readonly measure: string;
  readonly by?: readonly string[] | undefined;
  readonly where?: Where | undefined;
  readonly asOf?: number | undefined;
  readonly rescue?: Rescue | undefined;
  readonly per?: Denominator | undefined;
  readonly landmark?: number | undefined;
  readonly scheme?: string | undefined;
  readonly score?: string | undefined;
  readonly endRule?: EndRule | undefined;
  readonly withoutPinSites?: boolean | undefined;
};

/**
 * The answer to a measure, whichever kind it is.
 * @throws RangeError when the measure, the batch, the scheme or the denominator isn't known
 */
export async function ask(registry: Registry, asked: AnyQuestion): Promise<HealingAnswer | MeasureAnswer> {
  const { measure: id, by, where, asOf, rescue, per, landmark, scheme, score, endRule, withoutPinSites } = asked;
  const common = { measure: id, ...given({ by, where, asOf }) };
  if (isClock(id)) return healing(registry, { ...common, ...given({ rescue, per, landmark }) });
  const complication = complicationMeasures.find((one) => one.id === id);
  if (complication) return complications(registry, { ...common, measure: complication.id, ...given({ scheme, endRule, withoutPinSites }) });
  const plan = per === "plannedGainMm" || per === "plannedGainFinalMm" ? per : undefined;
  return measure(registry, { ...common, options: given({ plan, scoreCode: score }) });
}

type Given<T> = { [K in keyof T]?: Exclude<T[K], undefined> };

/** Only what was said. */
function given<T extends object>(options: T): Given<T> {
  return Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined)) as Given<T>;
}

export function isHealing(answer: HealingAnswer | MeasureAnswer): answer is HealingAnswer {
  return isClock(answer.measure);
}
