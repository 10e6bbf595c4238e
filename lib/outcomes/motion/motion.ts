import type { Reason, VisitRow } from "@/lib/codebook";

export type Joint = "kneeFlexionDeg" | "kneeExtensionDeg" | "ankleDorsiflexionDeg" | "hipFlexionDeg";
export type MotionVisit = Pick<VisitRow, "visitDay" | Joint>;
export type MotionMoment = "lost" | "regained" | "final";
export type MotionReading = { readonly measured: true; readonly value: number } | { readonly measured: false; readonly because: Reason };

const no = (because: Reason): MotionReading => ({ measured: false, because });

/**
 * Motion of a joint over the visits of a segment. Baseline: the last visit on or before surgery. Lost: baseline less the worst after it;
 * regained: the last less the worst; final: the last. Degrees; extension is 0 when straight, negative when lacking.
 */
export function motionOf(visits: readonly MotionVisit[], surgeryDay: number, joint: Joint, moment: MotionMoment): MotionReading {
  if (visits.length === 0) return no("no-visits");
  const read = visits.filter((visit) => visit[joint] !== null).sort((a, b) => a.visitDay - b.visitDay);
  const after = read.filter((visit) => visit.visitDay > surgeryDay).map((visit) => visit[joint] as number);
  const final = after.at(-1);
  if (final === undefined) return no("not-recorded");
  if (moment === "final") return { measured: true, value: final };
  const worst = Math.min(...after);
  if (moment === "regained") return { measured: true, value: final - worst };
  const baseline = read.filter((visit) => visit.visitDay <= surgeryDay).at(-1)?.[joint] ?? null;
  return baseline === null ? no("not-recorded") : { measured: true, value: baseline - worst };
}

/** Loss from baseline at a window, the visit nearest to its middle; none is carried forward. */
export function motionLossAt(
  visits: readonly MotionVisit[],
  surgeryDay: number,
  joint: Joint,
  window: { readonly from: number; readonly to: number },
): MotionReading {
  const baseline = visits.filter((one) => one.visitDay <= surgeryDay && one[joint] !== null).sort((a, b) => b.visitDay - a.visitDay)[0];
  const middle = (window.from + window.to) / 2;
  const inside = visits
    .filter((one) => one[joint] !== null && one.visitDay - surgeryDay >= window.from && one.visitDay - surgeryDay <= window.to)
    .sort((a, b) => Math.abs(a.visitDay - surgeryDay - middle) - Math.abs(b.visitDay - surgeryDay - middle))[0];
  if (!inside) return no("no-visits");
  if (!baseline) return no("not-recorded");
  return { measured: true, value: (baseline[joint] as number) - (inside[joint] as number) };
}
