import type { CurveGroup, CurvePointForFigure } from "@/lib/charts";
import { invented } from "./invented";

/** An invented group followed by row: each leaves at its day, with the event or without. The limits are made up about the estimate. */
export function inventedCurve(
  label: string,
  n: number,
  { seed = 3, middle = 170, share = 0.85, limits = true, more = {} as Partial<CurveGroup> } = {},
) {
  const next = invented(seed);
  const rows = Array.from({ length: n }, () => {
    const day = Math.max(20, Math.round(middle * Math.exp((next() + next() + next() - 1.5) * 0.9)));
    return { day, event: next() < share };
  });
  const curve: CurvePointForFigure[] = [];
  let free = 1;
  for (const day of [...new Set(rows.map((row) => row.day))].sort((a, b) => a - b)) {
    const atRisk = rows.filter((row) => row.day >= day).length;
    const events = rows.filter((row) => row.day === day && row.event).length;
    free *= 1 - events / atRisk;
    const half = limits && free < 1 ? Math.min(0.5, 0.9 / Math.sqrt(n)) * Math.sqrt(free * (1 - free)) * 2 : null;
    curve.push({
      day,
      atRisk,
      estimate: 1 - free,
      lower: half === null ? null : Math.max(0, 1 - free - half),
      upper: half === null ? null : Math.min(1, 1 - free + half),
      censored: rows.filter((row) => row.day === day && !row.event).length,
    });
  }
  return {
    label,
    segments: n + 3,
    patients: Math.ceil(n / 1.6) + 2,
    n,
    events: rows.filter(({ event }) => event).length,
    excluded: { "healing-date-missing": 2, "no-gain": 1 },
    curve,
    ...more,
  } satisfies CurveGroup;
}
