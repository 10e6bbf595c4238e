import type { FigureSource } from "../figure/source";

/** From the registry to the analysed: what stays, and what leaves and why, in order. */
export type FlowRecord = FigureSource & { readonly steps: readonly FlowStep[] };

export type FlowStep = {
  /** `stays`: how many are left here, such as in the registry, in the cohort, analysed; `leaves`: how many go, and why. */
  readonly kind: "stays" | "leaves";
  readonly words: string;
  readonly segments: number;
  readonly patients: number;
};

export type Walked = FlowStep & { readonly left: number };

/**
 * The steps with how many segments are left after each. Patients don't add up, since one may leave with one segment and stay with another.
 * @throws RangeError when the first step does not stay, or what stays is not what was there less what left
 */
export function walked({ steps }: FlowRecord): readonly Walked[] {
  const out: Walked[] = [];
  let left: number | null = null;
  for (const step of steps) {
    if (left === null && step.kind === "leaves") throw new RangeError("walked requires a first step that stays, received one that leaves");
    if (left !== null && step.kind === "stays" && step.segments !== left)
      throw new RangeError(`walked requires ${left} segments to stay after those that left, received ${step.segments}`);
    left = step.kind === "stays" ? step.segments : (left ?? 0) - step.segments;
    out.push({ ...step, left });
  }
  return out;
}
