import { type GroupLabels, pairOf, rowsOfPair } from "../cluster/groups";
import { countPatients } from "../cluster/patients";
import { type Coefficient, cr2Regression, type RegressionRecord } from "../cr2-regression";
import type { PatientLabels } from "../record";
import { requireSameLength } from "../require";
import { type Answer, type Asked, notesOnce } from "./answer";
import { type Covariate, covariateColumns, leftOutNote, refusals, requireCovariates } from "./covariates";

export interface AdjustedSituation extends Asked {
  readonly situation: "adjusted";
  /** A share of segments (0 or 1 a row) or a rate (events over exposure). Adjusted healing is `healing-compared` with covariates. */
  readonly outcome: "share" | "rate";
  readonly values: readonly number[];
  readonly exposure?: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  readonly between?: readonly [string | number, string | number];
  readonly covariates: readonly Covariate[];
}

export type AdjustedAnswer = Answer<{
  /** Difference of shares, first minus second, at equal covariates; null for a rate. */
  readonly difference: Coefficient | null;
  /** Ratio of shares or rates, first over second, at equal covariates. */
  readonly ratio: Coefficient | null;
  readonly models: readonly RegressionRecord[];
}>;

interface Rows {
  readonly values: readonly number[];
  readonly exposure: readonly number[] | undefined;
  readonly patient: PatientLabels;
  readonly design: readonly (readonly number[])[];
  readonly names: readonly string[];
  readonly leftOut: number;
}

/** CR2 regression with the covariates chosen beforehand; refused beyond one column for ten patients (a share: of the rarer outcome). */
export function estimateAdjusted(asked: AdjustedSituation): AdjustedAnswer {
  const { outcome, covariates, confidence = 0.95, test = false } = asked;
  const rows = rowsOf(asked);
  const notes = leftOutNote(rows.leftOut);
  const refused = refusals(covariates, rows.names.length - 1, informing(rows, outcome));
  if (refused.length > 0)
    return { lead: "values", records: { difference: null, ratio: null, models: [] }, test: null, notes: notesOnce(refused, notes) };
  const { values, patient, design, names } = rows;
  const exposure = outcome === "rate" && rows.exposure ? { exposure: rows.exposure } : {};
  const relative = cr2Regression({ values, patient, design, names, link: "log", confidence, ...exposure });
  const absolute = outcome === "share" ? cr2Regression({ values, patient, design, names, confidence }) : null;
  const [difference, ratio] = [absolute?.coefficients[1] ?? null, relative.coefficients[1] as Coefficient];
  const lead = difference ?? ratio;
  return {
    lead: difference ? "difference" : "ratio",
    records: { difference, ratio, models: absolute ? [absolute, relative] : [relative] },
    test: test ? { p: lead.p, method: (absolute ?? relative).method, notes: lead.notes } : null,
    notes: notesOnce(lead.notes, notes),
  };
}

function rowsOf({ values, exposure, group, patient, between, covariates }: AdjustedSituation): Rows {
  for (const column of [group, patient, exposure ?? values])
    requireSameLength("estimate", "values", values.length, "each column", column.length);
  requireCovariates(covariates, values.length);
  const { rows: inPair, sides } = rowsOfPair(group, pairOf("estimate", group, between));
  const pick = <T>(column: readonly T[], rows: readonly number[]) => rows.map((row) => column[row] as T);
  const columns = covariateColumns(
    covariates.map((one) => ({ ...one, values: pick(one.values, inPair) })),
    inPair.length,
  );
  const rows = pick(inPair, columns.rows);
  return {
    values: pick(values, rows),
    exposure: exposure && pick(exposure, rows),
    patient: pick(patient, rows),
    design: columns.rows.map((at, i) => [1 - (sides[at] as number), ...(columns.design[i] as readonly number[])]),
    names: ["group", ...columns.names],
    leftOut: columns.leftOut,
  };
}

/** Patients that carry the information: all, or of a share those with the rarer outcome. */
function informing({ values, patient }: Rows, outcome: "share" | "rate"): number {
  if (outcome === "rate") return countPatients(patient);
  const withOutcome = (wanted: number) => new Set(patient.filter((_, row) => values[row] === wanted)).size;
  return Math.min(withOutcome(0), withOutcome(1));
}
