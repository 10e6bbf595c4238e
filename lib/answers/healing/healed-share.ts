import { estimate, thresholds } from "@/lib/stats";
import type { HealingCurvePoint } from "./curve-point";
import { seed } from "./median-interval";

type Row = {
  readonly person: number;
  readonly days: number;
  readonly outcome: "healed" | "censored" | "ended";
  readonly gainMm: number | null;
};
type Median = { readonly days: number | null; readonly lower: number | null; readonly upper: number | null };
const none: Median = { days: null, lower: null, upper: null };

/** Share healed by Kaplan and Meier: nothing stops a bone from healing but the end of its films. */
export function withoutEnded(rows: readonly Row[], missing: number) {
  const { records, notes } = estimate({
    situation: "healing-curve",
    days: rows.map(({ days }) => days),
    healed: rows.map(({ outcome }) => Number(outcome === "healed")),
    patient: rows.map(({ person }) => person),
    gainCm: rows.map(({ gainMm }) => (gainMm ?? 0) / 10),
    missing,
    seed,
  });
  const one = records.curves[0];
  if (!one) return { curve: [], median: none, notes };
  const { time, atRisk, survival, lower, upper, censored } = one.curve.curve;
  // the curve of the healed rises: one less the share still unhealed, so its limits change places
  const curve = time.slice(0, one.shownSteps).map(
    (day, i): HealingCurvePoint => ({
      day,
      atRisk: atRisk[i] ?? 0,
      estimate: 1 - (survival[i] ?? 1),
      lower: complement(upper[i]),
      upper: complement(lower[i]),
      censored: censored[i] ?? 0,
    }),
  );
  return { curve, median: { days: one.curve.estimate, lower: one.curve.lower, upper: one.curve.upper }, notes };
}

/** Share healed by Aalen and Johansen: a bone that ended unhealed can't heal any more, and is not as one whose films ended. */
export function withEnded(rows: readonly Row[], competing: string) {
  const { records, notes } = estimate({
    situation: "competing",
    days: rows.map(({ days }) => days),
    event: rows.map(({ outcome }) => ({ censored: 0, healed: 1, ended: 2 })[outcome]),
    causes: ["healed", competing],
    patient: rows.map(({ person }) => person),
    seed,
  });
  const one = records.groups[0]?.incidence ?? null;
  const healed = one?.causes.find(({ cause }) => cause === 1);
  if (!one || !healed) return { curve: [], median: none, notes };
  const all = one.time.map(
    (day, i): HealingCurvePoint => ({
      day,
      atRisk: one.atRisk[i] ?? 0,
      estimate: healed.incidence[i] ?? 0,
      lower: healed.lower[i] ?? null,
      upper: healed.upper[i] ?? null,
      censored: one.censored[i] ?? 0,
    }),
  );
  const few = all.findIndex(({ atRisk }) => atRisk < thresholds.atRiskShown);
  const reached = (share: (point: HealingCurvePoint) => number | null) => all.find((point) => (share(point) ?? 0) >= 0.5)?.day ?? null;
  const median = {
    days: reached((point) => point.estimate),
    lower: reached((point) => point.upper),
    upper: reached((point) => point.lower),
  };
  return { curve: few === -1 ? all : all.slice(0, few), median, notes };
}

function complement(share: number | null | undefined): number | null {
  return share === null || share === undefined ? null : 1 - share;
}
