import { type AalenJohansen, aalenJohansen } from "../aalen-johansen";
import { type GroupLabels, levelsOf } from "../cluster/groups";
import { countPatients } from "../cluster/patients";
import { grayTest } from "../gray-test";
import type { Note } from "../notes";
import type { PatientLabels } from "../record";
import { requireSameLength } from "../require";
import { thresholds } from "../thresholds";
import { type Answer, type Asked, notesOnce, type TestAnswer, tooFew } from "./answer";

export interface CompetingSituation extends Asked {
  readonly situation: "competing";
  readonly days: readonly number[];
  /** 0 censored; otherwise the number of its cause, counted from 1 in the order of `causes`. */
  readonly event: readonly number[];
  /** Names of the causes; the first is the one asked about. */
  readonly causes: readonly string[];
  readonly patient: PatientLabels;
  readonly group?: GroupLabels;
  readonly seed: number;
}

export interface GroupIncidence {
  readonly label: string | number;
  readonly patients: number;
  /** Rows by outcome: censored first, then each cause. */
  readonly counts: readonly number[];
  /** Null below ten patients: the counts stand alone. */
  readonly incidence: AalenJohansen | null;
}

export type CompetingAnswer = Answer<{ readonly groups: readonly GroupIncidence[] }>;

/** Aalen–Johansen with errors by patient: resampled from twenty patients on, by the jackknife below, a table of counts below ten. */
export function estimateCompeting(asked: CompetingSituation): CompetingAnswer {
  const { days, event, causes, patient, test = false } = asked;
  if (causes.length < 2) throw new RangeError(`estimate requires at least two causes for competing, received ${causes.length}`);
  const group = asked.group ?? days.map(() => "all");
  for (const column of [event, patient, group]) requireSameLength("estimate", "days", days.length, "each column", column.length);
  const groups = levelsOf(group).map((label) => groupIncidence(asked, group, label));
  const few = groups.filter(({ incidence }) => incidence === null).map(({ patients }) => tooFew(patients, thresholds.patientsForCurve));
  const competing: Note = { code: "competing", what: causes.slice(1).join(", ") };
  return {
    lead: "groups",
    records: { groups },
    test: test && groups.length > 1 ? testOf(asked, group) : null,
    notes: notesOnce([competing], few, ...groups.map(({ incidence }) => incidence?.notes ?? [])),
  };
}

function groupIncidence(
  { days, event, causes, patient, seed, confidence = 0.95 }: CompetingSituation,
  group: GroupLabels,
  label: string | number,
) {
  const keep = <T>(values: readonly T[]) => values.filter((_, row) => group[row] === label);
  const rows = { times: keep(days), event: keep(event), patient: keep(patient) };
  const patients = countPatients(rows.patient);
  const counts = Array.from({ length: causes.length + 1 }, (_, cause) => rows.event.filter((one) => one === cause).length);
  if (patients < thresholds.patientsForCurve) return { label, patients, counts, incidence: null };
  const variance = patients < thresholds.patientsForBootstrap ? "jackknife" : "bootstrap";
  return { label, patients, counts, incidence: aalenJohansen({ ...rows, variance, seed, confidence }) };
}

/** Gray's test takes rows as unrelated, so it is had only with one bone a patient. */
function testOf({ days, event, patient }: CompetingSituation, group: GroupLabels): TestAnswer {
  if (countPatients(patient) === patient.length) return grayTest({ times: days, event, group, patient });
  return { p: null, method: "Gray’s test", notes: [{ code: "not-estimable", because: "patients have several bones" }] };
}
