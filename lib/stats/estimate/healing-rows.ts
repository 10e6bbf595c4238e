import { type GroupLabels, pairOf, rowsOfPair } from "../cluster/groups";
import type { PatientLabels } from "../record";
import type { Asked } from "./answer";
import { type Covariate, covariateColumns, requireCovariates } from "./covariates";

export interface HealingComparedSituation extends Asked {
  readonly situation: "healing-compared";
  /** Days to healing, or to the last film without it. */
  readonly days: readonly number[];
  /** 1 healed, 0 not yet. */
  readonly healed: readonly number[];
  /** Last film without healing of each healed row, where known: with it healing lies between two films. */
  readonly lastUnhealed?: readonly number[];
  readonly gainCm: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  readonly between?: readonly [string | number, string | number];
  readonly covariates?: readonly Covariate[];
  readonly seed: number;
}

/** The rows of both groups with all covariates: first group is 1 in `first`; `extra` are the covariates' columns. */
export interface HealingRows {
  readonly pair: readonly [string | number, string | number];
  readonly days: readonly number[];
  readonly healed: readonly number[];
  readonly lastUnhealed: readonly number[] | undefined;
  readonly gainCm: readonly number[];
  readonly first: readonly number[];
  readonly group: readonly (string | number)[];
  readonly patient: readonly (string | number)[];
  readonly names: readonly string[];
  readonly extra: readonly (readonly number[])[];
  readonly leftOut: number;
}

export function healingRows(asked: HealingComparedSituation): HealingRows {
  requireRowsAlike(asked);
  requireCovariates(asked.covariates ?? [], asked.days.length);
  const pair = pairOf("estimate", asked.group, asked.between);
  const { rows: inPair } = rowsOfPair(asked.group, pair);
  // rows rise: as many as there are values are all of them
  const pick = <T>(values: readonly T[], rows: readonly number[]) =>
    rows.length === values.length ? values : rows.map((row) => values[row] as T);
  const covariates = (asked.covariates ?? []).map((one) => ({ ...one, values: pick(one.values, inPair) }));
  const columns = covariateColumns(covariates, inPair.length);
  const rows = pick(inPair, columns.rows);
  const group = pick(asked.group, rows);
  return {
    pair,
    days: pick(asked.days, rows),
    healed: pick(asked.healed, rows),
    lastUnhealed: asked.lastUnhealed && pick(asked.lastUnhealed, rows),
    gainCm: pick(asked.gainCm, rows),
    first: group.map((label) => (label === pair[0] ? 1 : 0)),
    group,
    patient: pick(asked.patient, rows),
    names: columns.names,
    extra: columns.design,
    leftOut: columns.leftOut,
  };
}

function requireRowsAlike({ days, healed, gainCm, group, patient, lastUnhealed }: HealingComparedSituation): void {
  const lengths = [healed, gainCm, group, patient, lastUnhealed ?? days].map((column) => column.length);
  const other = lengths.find((length) => length !== days.length);
  if (other !== undefined) throw new RangeError(`estimate requires healing rows of one length (${days.length}), received ${other}`);
  const isBad = (value: number) => !(value > 0 && Number.isFinite(value));
  if (days.some(isBad) || gainCm.some(isBad)) throw new RangeError("estimate requires days and gains above zero, received another");
}

/** The healed rows only. */
export function healedOnly(rows: HealingRows): HealingRows {
  const keep = <T>(values: readonly T[]) => values.filter((_, row) => rows.healed[row] === 1);
  return {
    ...rows,
    days: keep(rows.days),
    healed: keep(rows.healed),
    lastUnhealed: rows.lastUnhealed && keep(rows.lastUnhealed),
    gainCm: keep(rows.gainCm),
    first: keep(rows.first),
    group: keep(rows.group),
    patient: keep(rows.patient),
    extra: keep(rows.extra),
  };
}

/** log(cm), the first group's column, and the covariates. */
export function healingDesign(rows: HealingRows, withGroup: boolean): number[][] {
  return rows.gainCm.map((cm, i) => {
    const group = withGroup ? [rows.first[i] as number] : [];
    return [Math.log(cm), ...group, ...(rows.extra[i] as readonly number[])];
  });
}
