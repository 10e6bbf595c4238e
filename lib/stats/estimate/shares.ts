import { clopperPearson } from "../clopper-pearson";
import { type GroupLabels, pairOf, rowsOfPair } from "../cluster/groups";
import { firthLogistic } from "../firth-logistic";
import { fisherExact } from "../fisher-exact";
import type { Note } from "../notes";
import { permutationDifference } from "../permutation-difference";
import type { PatientLabels } from "../record";
import { riskDifference } from "../risk-difference";
import { riskRatio } from "../risk-ratio";
import { signFlip } from "../sign-flip";
import { thresholds } from "../thresholds";
import { wilson } from "../wilson";
import { wilsonClustered } from "../wilson-clustered";
import { type Answer, type Asked, notesOnce } from "./answer";

export interface PatientShareSituation extends Asked {
  readonly situation: "share-of-patients";
  readonly x: number;
  readonly n: number;
  /** Another group to test against. */
  readonly against?: { readonly x: number; readonly n: number };
}

export type PatientShareAnswer = Answer<{ readonly share: ReturnType<typeof wilson>; readonly exact: ReturnType<typeof clopperPearson> }>;

/** x of G patients with Wilson's interval; the exact one beside it. Two groups are tested by Fisher. */
export function estimatePatientShare({ x, n, against, test = false, confidence = 0.95 }: PatientShareSituation): PatientShareAnswer {
  const tested =
    test && against
      ? fisherExact({
          table: [
            [x, n - x],
            [against.x, against.n - against.x],
          ],
        })
      : null;
  return {
    lead: "share",
    records: { share: wilson({ x, n, confidence }), exact: clopperPearson({ x, n, confidence }) },
    test: tested,
    notes: [],
  };
}

export interface SegmentShareSituation extends Asked {
  readonly situation: "share-of-segments";
  readonly event: readonly number[];
  readonly patient: PatientLabels;
}

export type SegmentShareAnswer = Answer<{ readonly share: ReturnType<typeof wilsonClustered> }>;

/** x of n segments with Wilson's interval on n*; `plain` stands beside it as if every bone were another patient. */
export function estimateSegmentShare({ event, patient, confidence = 0.95 }: SegmentShareSituation): SegmentShareAnswer {
  const share = wilsonClustered({ event, patient, confidence });
  const few = share.patients < thresholds.patientsForInterval;
  const deff: readonly Note[] = share.deff === null || few ? [] : [{ code: "design-effect", deff: share.deff }];
  return { lead: few ? "values" : "share", records: { share }, test: null, notes: notesOnce(share.notes, deff) };
}

export interface TwoSharesSituation extends Asked {
  readonly situation: "two-shares";
  readonly event: readonly number[];
  readonly group: GroupLabels;
  readonly patient: PatientLabels;
  readonly between?: readonly [string | number, string | number];
  readonly seed: number;
}

export type TwoSharesAnswer = Answer<{
  readonly difference: ReturnType<typeof riskDifference>;
  readonly ratio: ReturnType<typeof riskRatio>;
  /** Odds ratio with a profile interval, where a cell is zero. */
  readonly firth: ReturnType<typeof firthLogistic> | null;
}>;

/**
 * Risk difference (Newcombe on n*) and risk ratio (CR2, log link); with patients in both groups the ratio leads, because the hybrid takes
 * the groups as independent. Firth's profile stands beside when a cell is zero.
 */
export function estimateTwoShares(asked: TwoSharesSituation): TwoSharesAnswer {
  const { event, group, patient, confidence = 0.95, test = false, seed } = asked;
  const between = pairOf("estimate", group, asked.between);
  const rows = { group, patient, between };
  const difference = riskDifference({ ...rows, event, confidence });
  const ratio = riskRatio({ ...rows, event, confidence });
  const shared = difference.patientsInBoth > 0;
  const few = Math.min(...difference.groups.map((one) => one.patients as number)) < thresholds.patientsForInterval;
  const firth = few ? null : profiled(event, group, between, confidence);
  const tested = { ...rows, values: event, seed };
  return {
    lead: few ? "values" : shared && ratio.lower !== null ? "ratio" : "difference",
    records: { difference, ratio, firth },
    test: !test || few ? null : shared ? signFlip(tested) : permutationDifference(tested),
    notes: notesOnce(difference.notes, firth ? zeroCell(patient, group, between) : []),
  };
}

/** The first group's odds over the second's; null unless a cell is zero. */
function profiled(event: readonly number[], group: GroupLabels, between: readonly [string | number, string | number], confidence: number) {
  const { rows, sides } = rowsOfPair(group, between);
  const own = rows.map((row) => event[row] as number);
  const empty = [0, 1].some((side) => [0, 1].some((outcome) => !own.some((one, i) => sides[i] === side && one === outcome)));
  const constant = own.every((one) => one === own[0]);
  return empty && !constant ? firthLogistic({ design: Array.from(sides, (side) => [1 - side]), event: own, confidence }) : null;
}

function zeroCell(patient: PatientLabels, group: GroupLabels, between: readonly [string | number, string | number]): readonly Note[] {
  const { rows } = rowsOfPair(group, between);
  const fallback: Note = { code: "fallback-used", because: "a cell is zero, odds ratio with Firth’s penalty" };
  const several = new Set(rows.map((row) => patient[row])).size < rows.length;
  return several ? [fallback, { code: "plain-limit", because: "Firth’s profile" }] : [fallback];
}
