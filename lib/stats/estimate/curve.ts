import { type GroupLabels, levelsOf } from "../cluster/groups";
import { countPatients } from "../cluster/patients";
import { type KaplanMeier, kaplanMeier } from "../kaplan-meier";
import { logRank } from "../log-rank";
import type { Note } from "../notes";
import { permutationDifference } from "../permutation-difference";
import type { PatientLabels } from "../record";
import { requireSameLength } from "../require";
import { logRankScores } from "../survival/log-rank-scores";
import { thresholds } from "../thresholds";
import { type Turnbull, turnbull } from "../turnbull";
import { type Answer, type Asked, notesOnce, type TestAnswer, tooFew } from "./answer";
import { type Quantiles, quantilesOf } from "./median";

export interface CurveSituation extends Asked {
  readonly situation: "healing-curve";
  readonly days: readonly number[];
  readonly healed: readonly number[];
  /** Last film without healing of each row; with it the curve is drawn between films. */
  readonly lastUnhealed?: readonly number[];
  readonly patient: PatientLabels;
  readonly group?: GroupLabels;
  readonly gainCm: readonly number[];
  /** Rows that have no days and so no place on the curve. */
  readonly missing?: number;
  readonly seed: number;
}

export interface GroupCurve {
  readonly label: string | number;
  readonly n: number;
  readonly patients: number;
  readonly censored: number;
  readonly curve: KaplanMeier;
  readonly betweenFilms: Turnbull | null;
  /** Steps of the curve to show: the tail is cut where fewer than five are at risk. */
  readonly shownSteps: number;
  readonly gainCm: Quantiles;
}

export type CurveAnswer = Answer<{ readonly curves: readonly GroupCurve[] }>;

const everyone = "all";

/** Kaplan–Meier in days with limits by patient (from ten patients on), the gains of the groups beside it. */
export function estimateCurve(asked: CurveSituation): CurveAnswer {
  const { days, healed, gainCm, missing = 0, test = false } = asked;
  const group = asked.group ?? days.map(() => everyone);
  for (const column of [healed, gainCm, group, asked.patient, asked.lastUnhealed ?? days]) {
    requireSameLength("estimate", "days", days.length, "each column", column.length);
  }
  const labels = levelsOf(group);
  const curves = labels.map((label) => groupCurve(asked, group, label));
  const censored = curves.reduce((sum, one) => sum + one.censored, 0);
  const counted: Note = { code: "censored-and-missing", censored, n: days.length, missing };
  return {
    lead: "curves",
    records: { curves },
    test: test && labels.length > 1 ? testOf(asked, group) : null,
    notes: notesOnce([counted], ...curves.map(notesOf)),
  };
}

function groupCurve(asked: CurveSituation, group: GroupLabels, label: string | number): GroupCurve {
  const keep = <T>(values: readonly T[]) => values.filter((_, row) => group[row] === label);
  const [times, event, patient] = [keep(asked.days), keep(asked.healed), keep(asked.patient)];
  const patients = countPatients(patient);
  const full = kaplanMeier({ times, event, patient, confidence: asked.confidence ?? 0.95 });
  const last = asked.lastUnhealed && keep(asked.lastUnhealed);
  const shown = full.curve.atRisk.findIndex((n) => n < thresholds.atRiskShown);
  return {
    label,
    n: times.length,
    patients,
    censored: times.length - full.events,
    curve: patients < thresholds.patientsForCurve ? withoutLimits(full) : full,
    betweenFilms: last
      ? turnbull({
          after: times.map((day, i) => (event[i] ? (last[i] as number) : day)),
          by: times.map((day, i) => (event[i] ? day : null)),
          patient,
        })
      : null,
    shownSteps: shown < 0 ? full.curve.time.length : shown,
    gainCm: quantilesOf(keep(asked.gainCm)),
  };
}

function withoutLimits(full: KaplanMeier): KaplanMeier {
  const none = full.curve.time.map(() => null);
  return { ...full, lower: null, upper: null, curve: { ...full.curve, se: none, lower: none, upper: none } };
}

function notesOf({ patients, shownSteps, curve }: GroupCurve): readonly Note[] {
  const notes: Note[] = [];
  if (patients < thresholds.patientsForCurve) notes.push(tooFew(patients, thresholds.patientsForCurve));
  if (shownSteps < curve.curve.time.length) notes.push({ code: "few-at-risk", needed: thresholds.atRiskShown });
  return notes;
}

/** Robust score by patient; two groups below ten patients without a patient in both: whole patients permuted on the same scores. */
function testOf({ days, healed, patient, seed }: CurveSituation, group: GroupLabels): TestAnswer {
  const rows = { times: days, event: healed };
  const robust = logRank({ ...rows, group, patient });
  const labels = levelsOf(group);
  const patientsOf = (label: string | number) => new Set(patient.filter((_, row) => group[row] === label));
  const sizes = labels.map((label) => patientsOf(label).size);
  const shared = sizes.reduce((sum, size) => sum + size, 0) > countPatients(patient);
  if (labels.length > 2 || shared || Math.min(...sizes) >= thresholds.patientsForCurve) return robust;
  const permuted = permutationDifference({ values: logRankScores(rows), group, patient, seed });
  return { ...permuted, method: "permutation of whole patients on log-rank scores" };
}
