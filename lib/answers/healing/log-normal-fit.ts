import { definitionSentence } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { daysAtMedianGain, normalPlot } from "@/lib/stats";
import { answerCache } from "../question/cache";
import type { Head } from "../question/open";
import type { GroupKey } from "./groups";
import { type ClockQuestion, openClock } from "./open-clock";
import type { DayGroup, DayRow } from "./readings";

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
  const { head, definition, groups } = await openClock(registry, asked, { name: "log-normal-fit", method });
  return cached(`${registry.folder} ${head.stamp}`, async () => ({
    ...head,
    measure: definition.id,
    definition: { title: definition.title, sentence: definitionSentence(definition) },
    groups: (await groups()).map(answerGroup),
  }));
}

type Gained = DayRow & { readonly gainMm: number };
const canBeFitted = (row: DayRow): row is Gained => row.gainMm !== null && row.gainMm > 0 && row.days > 0;

function answerGroup({ key, label, cases, rows, ended, excluded }: DayGroup): LogNormalGroup {
  const used = rows.filter(canBeFitted);
  const left = {
    ...excluded,
    "ended-unhealed": ended.length,
    "days-out-of-order": (excluded["days-out-of-order"] ?? 0) + rows.length - used.length,
  };
  return {
    key,
    label,
    patients: new Set(cases.map(({ segment }) => segment.person)).size,
    segments: cases.length,
    n: used.length,
    healed: used.filter(({ healed }) => healed).length,
    excluded: Object.fromEntries(Object.entries(left).filter(([, n]) => n > 0)),
    ...fitOf(used),
  };
}

function fitOf(rows: readonly Gained[]): Pick<LogNormalGroup, "scale" | "points"> {
  const healed = rows.map((row) => Number(row.healed));
  if (!healed.includes(1)) return { scale: null, points: [] };
  const gainCm = rows.map(({ gainMm }) => gainMm / 10);
  const model = daysAtMedianGain({
    days: rows.map(({ days }) => days),
    healed,
    gainCm,
    patient: rows.map(({ person }) => person),
  })?.model;
  const [alpha, beta] = model?.coefficients ?? [];
  if (!model || !alpha || !beta) return { scale: null, points: [] };
  const residuals = rows.map(({ days }, i) => (Math.log(days) - alpha.estimate - beta.estimate * Math.log(gainCm[i] ?? 1)) / model.scale);
  const points = normalPlot({ values: residuals, event: healed }).map(({ row, value, normal }) => ({
    segment: rows[row]?.segment ?? 0,
    residual: value,
    normal,
  }));
  return { scale: model.scale, points };
}
