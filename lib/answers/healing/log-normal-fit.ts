import { definitionSentence } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { normalPlot } from "@/lib/stats";
import { answerCache } from "../question/cache";
import type { Head } from "../question/open";
import { type Columns, withGain } from "./columns";
import type { ReadGroup } from "./group";
import type { GroupKey } from "./groups";
import { type ClockQuestion, openClock } from "./open-clock";
import { fitAt } from "./summaries";

export type LogNormalGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  /** Segments in the fit, healed and censored. */
  readonly n: number;
  readonly healed: number;
  readonly excluded: Readonly<Record<string, number>>;
  /** σ of the logarithm of days at equal gain; `null` where the model can't be fitted. */
  readonly scale: number | null;
  /** Each healed bone: how far it lies from the model in σ, and where a log-normal time would lie in its place. */
  readonly points: readonly { readonly segment: number; readonly residual: number; readonly normal: number }[];
};
export type LogNormalAnswer = Head & {
  readonly measure: string;
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly groups: readonly LogNormalGroup[];
};

const cached = answerCache<LogNormalAnswer>(({ groups }) => groups.reduce((sum, { points }) => sum + points.length, 0));

/**
 * How well the log-normal time model fits that answers days at the median gain: its residuals against the normal quantiles in their place.
 * @throws RangeError when the clock, the batch or the landmark isn't one
 */
export async function logNormalFit(registry: Registry, asked: ClockQuestion): Promise<LogNormalAnswer> {
  const method = "residuals of log(days) = α + β·log(cm) + σ·normal, the unhealed in, against normal quantiles of the product-limit curve";
  const { head, definition, readings } = await openClock(registry, asked, { name: "log-normal-fit", method });
  return cached(`${registry.folder} ${head.stamp}`, async () => {
    const { groups, medianGainMm } = await readings();
    return {
      ...head,
      measure: definition.id,
      definition: { title: definition.title, sentence: definitionSentence(definition) },
      groups: groups.map((group) => answerGroup(group, medianGainMm)),
    };
  });
}

function answerGroup({ key, label, cases, patients, columns, ended, excluded }: ReadGroup, medianGainMm: number | null): LogNormalGroup {
  const { n, healed, ...fit } = fitOf(columns, medianGainMm);
  const left = {
    ...excluded,
    "ended-unhealed": ended,
    "days-out-of-order": (excluded["days-out-of-order"] ?? 0) + columns.days.length - n,
  };
  return {
    key,
    label,
    patients,
    segments: cases.length,
    n,
    healed,
    excluded: Object.fromEntries(Object.entries(left).filter(([, count]) => count > 0)),
    ...fit,
  };
}

function fitOf(columns: Columns, medianGainMm: number | null): Pick<LogNormalGroup, "n" | "healed" | "scale" | "points"> {
  const { days, healed, gainCm, row: rows } = withGain(columns, { alsoDays: true });
  const counts = { n: days.length, healed: healed.reduce((sum, one) => sum + one, 0) };
  const model = medianGainMm === null ? undefined : fitAt(columns, medianGainMm)?.model;
  const [alpha, beta] = model?.coefficients ?? [];
  if (!model || !alpha || !beta) return { ...counts, scale: null, points: [] };
  const residuals = days.map((day, i) => (Math.log(day) - alpha.estimate - beta.estimate * Math.log(gainCm[i] ?? 1)) / model.scale);
  const points = normalPlot({ values: residuals, event: healed }).map(({ row, value, normal }) => ({
    segment: columns.segment[rows[row] ?? 0] ?? 0,
    residual: value,
    normal,
  }));
  return { ...counts, scale: model.scale, points };
}
