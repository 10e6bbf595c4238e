import { addAt } from "./add-at";
import type { Groups } from "./groups";
import { atRiskByGroup } from "./log-rank-sums";
import type { RiskSteps } from "./risk-steps";

/** One step as Gray's test sees it, a number a group. */
interface GrayStep {
  readonly atRisk: readonly number[];
  /** Events of the cause, and of the others. */
  readonly own: readonly number[];
  readonly other: readonly number[];
  /** Share without any event just before and just after the step. */
  readonly before: readonly number[];
  readonly after: readonly number[];
  /** Share without the cause just before: 1 − cumulative incidence. */
  readonly free: readonly number[];
  /** At risk over the share without any event: how many would be at risk had nobody met another cause. */
  readonly restored: readonly number[];
  /** Pooled share without the cause, before and after. */
  readonly pooledFree: number;
  readonly pooledFreeAfter: number;
}

/**
 * Score and variance of Gray's test for one cause, by group.
 * Gray 1988, Ann Stat 16:1141-1154, with weight one; variance under equal incidences with pooled estimates, ties as sampling without return.
 */
export function graySums(steps: RiskSteps, groups: Groups, event: ArrayLike<number>, cause: number) {
  const rows = graySteps(steps, groups, event, cause);
  const k = groups.labels.length;
  const score = new Float64Array(k);
  for (const step of rows) addScore(score, step);
  return { score, variance: varianceOf(rows, k) };
}

function graySteps(steps: RiskSteps, groups: Groups, event: ArrayLike<number>, cause: number): readonly GrayStep[] {
  const k = groups.labels.length;
  const atRisk = atRiskByGroup(steps, groups);
  const counts = eventsByGroup(steps, groups, event, cause);
  let before = new Array<number>(k).fill(1);
  let free = new Array<number>(k).fill(1);
  let pooledFree = 1;
  const rows: GrayStep[] = [];
  for (let s = 0; s < steps.time.length; s++) {
    if (steps.events[s] === 0) continue;
    const at = (columns: readonly Float64Array[]) => columns.map((column) => column[s] as number);
    const [n, own, other] = [at(atRisk), at(counts.own), at(counts.other)];
    const restored = n.map((count, g) => (count > 0 ? count / (before[g] as number) : 0));
    const after = n.map((count, g) =>
      count > 0 ? ((before[g] as number) * (count - (own[g] as number) - (other[g] as number))) / count : (before[g] as number),
    );
    const pooledFreeAfter = pooledFree - sum(own) / sum(restored);
    rows.push({ atRisk: n, own, other, before, after, free, restored, pooledFree, pooledFreeAfter });
    free = free.map((share, g) => ((n[g] as number) > 0 ? share - ((before[g] as number) * (own[g] as number)) / (n[g] as number) : share));
    before = after;
    pooledFree = pooledFreeAfter;
  }
  return rows;
}

function eventsByGroup({ exit, time }: RiskSteps, groups: Groups, event: ArrayLike<number>, cause: number) {
  const own = groups.labels.map(() => new Float64Array(time.length));
  const other = groups.labels.map(() => new Float64Array(time.length));
  for (let row = 0; row < exit.length; row++) {
    if (event[row]) addAt((event[row] === cause ? own : other)[groups.code[row] as number] as Float64Array, exit[row] as number, 1);
  }
  return { own, other };
}

/** Own events less the share of all that the group's modified risk set would bear. */
function addScore(score: Float64Array, { own, free, restored }: GrayStep): void {
  const weights = restored.map((count, g) => count * (free[g] as number));
  const [all, total] = [sum(own), sum(weights)];
  own.forEach((count, g) => {
    addAt(score, g, count - (all * (weights[g] as number)) / total);
  });
}

/**
 * Each group's events move the scores twice: directly, and through the incidence later (the compensator C still to come).
 * So the compensators are found first, then the squares are summed.
 */
function varianceOf(rows: readonly GrayStep[], k: number): Float64Array {
  const variance = new Float64Array(k * k);
  const total = new Float64Array(k * k);
  for (const step of rows) addCompensator(total, step);
  const soFar = new Float64Array(k * k);
  for (const step of rows) {
    addCompensator(soFar, step);
    const toCome = total.map((value, at) => value - (soFar[at] as number));
    for (let g = 0; g < k; g++) if ((step.atRisk[g] as number) > 0) addSquares(variance, step, g, toCome);
  }
  return variance;
}

/** Direct effect of an event in group g on the score of group i: restored(i)·(1 if i is g, less g's part of all). */
function direct({ restored }: GrayStep, i: number, g: number): number {
  return (restored[i] as number) * ((i === g ? 1 : 0) - (restored[g] as number) / sum(restored));
}

function addCompensator(compensator: Float64Array, step: GrayStep): void {
  const all = sum(step.own);
  if (all === 0) return;
  const k = step.own.length;
  const hazard = all / (sum(step.restored) * step.pooledFree);
  for (let i = 0; i < k; i++) for (let g = 0; g < k; g++) addAt(compensator, i * k + g, direct(step, i, g) * hazard);
}

function addSquares(variance: Float64Array, step: GrayStep, g: number, toCome: Float64Array): void {
  const k = step.own.length;
  const [n, before, after] = [step.atRisk[g] as number, step.before[g] as number, step.after[g] as number];
  const ratio = after > 0 ? step.pooledFreeAfter / after : 0;
  const [all, restored, other] = [sum(step.own), sum(step.restored), step.other[g] as number];
  const ofCause = (ties(all, restored * before) * before * all) / (restored * n);
  addOuter(variance, ofCause, (i) => direct(step, i, g) + (1 - ratio) * (toCome[i * k + g] as number), k);
  const ofOthers = (ties(other, n) * before * before * other) / (n * n);
  addOuter(variance, ofOthers, (i) => ratio * (toCome[i * k + g] as number), k);
}

/** Variance of several events at one time against as many single ones. */
function ties(events: number, population: number): number {
  return events > 1 ? 1 - (events - 1) / (population - 1) : 1;
}

function addOuter(variance: Float64Array, spread: number, effect: (i: number) => number, k: number): void {
  for (let i = 0; i < k; i++) for (let j = 0; j < k; j++) addAt(variance, i * k + j, spread * effect(i) * effect(j));
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
