import type { Where } from "@/lib/cohorts";
import { indexDefinition, type Rescue } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { estimate } from "@/lib/stats";
import { type Head, openQuestion } from "../question/open";
import type { CurvePoint, Note } from "../types";
import type { GroupKey } from "./groups";
import { seed } from "./median-interval";
import { type DayGroup, dayGroups } from "./readings";
import { said } from "./said";

export type CurveGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  readonly n: number;
  readonly healed: number;
  readonly censored: number;
  readonly ended: number;
  readonly excluded: Readonly<Record<string, number>>;
  /** Share healed by a day, with its limits by patient; cut where fewer than five are at risk. */
  readonly curve: readonly CurvePoint[];
  /** Days at which segments were censored. */
  readonly censoredAt: readonly number[];
  readonly median: { readonly days: number | null; readonly lower: number | null; readonly upper: number | null };
  readonly medianGainMm: number | null;
};
export type HealingCurveAnswer = Head & {
  readonly measure: "time-to-consolidation";
  readonly unit: "days";
  readonly groups: readonly CurveGroup[];
  readonly notes: readonly Note[];
};

/** The gain bands of the trade's question (measures, *Summaries*), as a split. */
export const gainBands = "gainMm:30/50/80";

/** The consolidation curve in days with the unhealed in, by group or by gain band. */
export async function healingCurve(
  registry: Registry,
  asked: { readonly by?: readonly string[]; readonly where?: Where; readonly rescue?: Rescue; readonly asOf?: number },
): Promise<HealingCurveAnswer> {
  const definition = { ...indexDefinition("time-to-consolidation"), rescue: asked.rescue ?? "counted" } as const;
  const head = await openQuestion(registry, {
    ...asked,
    measure: "time-to-consolidation.curve",
    method: "Kaplan–Meier on the day scale, log-log limits, robust by patient",
    options: { rescue: definition.rescue },
    seed,
  });
  const groups = await dayGroups(registry, head.state, definition, { where: asked.where ?? {}, by: asked.by ?? [] });
  const answered = groups.map(answerGroup);
  return {
    ...head,
    measure: "time-to-consolidation",
    unit: "days",
    groups: answered.map(({ group }) => group),
    notes: answered.flatMap(({ notes }) => notes).filter(firstOfCode),
  };
}

function firstOfCode(note: Note, i: number, notes: readonly Note[]): boolean {
  return notes.findIndex(({ text }) => text === note.text) === i;
}

function answerGroup({ key, label, cases, rows, ended, excluded }: DayGroup): {
  readonly group: CurveGroup;
  readonly notes: readonly Note[];
} {
  const counted = rows.filter(({ days }) => days > 0);
  const head = {
    key,
    label,
    patients: new Set(cases.map(({ segment }) => segment.person)).size,
    segments: cases.length,
    n: counted.length,
    healed: counted.filter(({ healed }) => healed).length,
    censored: counted.filter(({ healed }) => !healed).length,
    ended,
    excluded,
    medianGainMm: medianOf(counted.flatMap(({ gainMm }) => (gainMm === null ? [] : [gainMm]))),
  };
  const none = { days: null, lower: null, upper: null };
  if (counted.length === 0) return { group: { ...head, curve: [], censoredAt: [], median: none }, notes: [] };
  const { records, notes } = estimate({
    situation: "healing-curve",
    days: counted.map(({ days }) => days),
    healed: counted.map(({ healed }) => Number(healed)),
    patient: counted.map(({ person }) => person),
    gainCm: counted.map(({ gainMm }) => (gainMm ?? 0) / 10),
    missing: excluded["healing-date-missing"] ?? 0,
    seed,
  });
  const one = records.curves[0];
  if (!one) return { group: { ...head, curve: [], censoredAt: [], median: none }, notes: [] };
  const { time, atRisk, survival, lower, upper } = one.curve.curve;
  // the curve of the healed rises: one less the share still unhealed, so its limits change places
  const curve = time.slice(0, one.shownSteps).map((day, i) => ({
    day,
    atRisk: atRisk[i] ?? 0,
    estimate: 1 - (survival[i] ?? 1),
    lower: complement(upper[i]),
    upper: complement(lower[i]),
  }));
  const median = { days: one.curve.estimate, lower: one.curve.lower, upper: one.curve.upper };
  const censoredAt = counted.filter(({ healed }) => !healed).map(({ days }) => days);
  return { group: { ...head, curve, censoredAt, median }, notes: notes.map(said) };
}

function complement(share: number | null | undefined): number | null {
  return share === null || share === undefined ? null : 1 - share;
}

function medianOf(values: readonly number[]): number | null {
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length / 2;
  return sorted.length === 0 ? null : ((sorted[Math.ceil(half) - 1] ?? 0) + (sorted[Math.floor(half)] ?? 0)) / 2;
}
