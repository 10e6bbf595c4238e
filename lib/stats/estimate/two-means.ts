import { type GroupLabels, pairOf } from "../cluster/groups";
import { cr2Difference } from "../cr2-difference";
import type { Note } from "../notes";
import { pairedT } from "../paired-t";
import { permutationDifference } from "../permutation-difference";
import type { PatientLabels } from "../record";
import { signFlip } from "../sign-flip";
import { thresholds } from "../thresholds";
import { welch } from "../welch";
import { type Answer, type Asked, notesOnce } from "./answer";
import { sharedDenominator } from "./shared-denominator";

export interface TwoMeansSituation extends Asked {
  readonly situation: "two-means";
  readonly values: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  readonly between?: readonly [string | number, string | number];
  /** Given when the values are an index: the gains that it was divided by. */
  readonly gains?: readonly number[];
  readonly seed: number;
}

export type TwoMeansAnswer = Answer<{
  readonly difference: ReturnType<typeof cr2Difference>;
  readonly patientMeans: ReturnType<typeof welch> | null;
  readonly withinPatients: ReturnType<typeof pairedT> | null;
}>;

/**
 * First minus second. No patient in both: CR2, patient means by Welch in front when df is below four. Some in both: the difference within
 * patients from five such patients on, CR2 over all beside it.
 */
export function estimateTwoMeans(asked: TwoMeansSituation): TwoMeansAnswer {
  const { values, group, patient, gains, confidence = 0.95, test = false, seed } = asked;
  const between = pairOf("estimate", group, asked.between);
  const rows = { values, group, patient, between };
  const difference = cr2Difference({ ...rows, confidence });
  const denominator = sharedDenominator(gains, group, [between]);
  if (difference.patientsInBoth > 0) return shared(rows, difference, denominator, { confidence, test, seed });
  const few = difference.df === null;
  const patientMeans = welch({ ...rows, confidence });
  const short = !few && (difference.df as number) < thresholds.dfForSegmentMean;
  const fewNote: readonly Note[] = short ? [{ code: "few-patients", df: difference.df as number }] : [];
  return {
    lead: few ? "values" : short ? "patientMeans" : "difference",
    records: { difference, patientMeans, withinPatients: null },
    test: test && !few ? permutationDifference({ ...rows, seed }) : null,
    notes: notesOnce(difference.notes, fewNote, denominator),
  };
}

type Rows = Pick<TwoMeansSituation, "values" | "group" | "patient"> & { readonly between: readonly [string | number, string | number] };

function shared(
  rows: Rows,
  difference: ReturnType<typeof cr2Difference>,
  denominator: readonly Note[],
  { confidence, test, seed }: { confidence: number; test: boolean; seed: number },
): TwoMeansAnswer {
  const both = difference.patientsInBoth;
  const enough = both >= thresholds.patientsInBothGroups;
  const said: Note[] = [{ code: "patients-in-both", patients: both }];
  if (!enough) said.push({ code: "fallback-used", because: `${both} patients in both groups, ${thresholds.patientsInBothGroups} needed` });
  return {
    lead: enough ? "withinPatients" : difference.df === null ? "values" : "difference",
    records: { difference, patientMeans: null, withinPatients: pairedT({ ...rows, confidence }) },
    test: test ? signFlip({ ...rows, seed }) : null,
    notes: notesOnce(difference.notes, said, denominator),
  };
}
