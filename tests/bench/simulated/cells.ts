import {
  blandAltman,
  cr2Difference,
  cr2Mean,
  normalQuantile,
  permutationDifference,
  plainMean,
  type Random,
  seededRandom,
  wilsonClustered,
} from "@/lib/stats";
import { eventRows, normalRows, type Segments } from "./draws";

export const patientNumbers = [4, 6, 10, 20] as const;
export const segmentNumbers: readonly Segments[] = [1, 2, 3, 4, "1 to 4"];
export const correlations = [0, 0.5, 0.8] as const;

/** Share of simulated samples whose 95 % interval holds the truth; `plain` with every row as another patient. */
export interface Covered {
  readonly segments: Segments;
  readonly patients: string;
  readonly icc: number;
  readonly covered: number;
  readonly plain: number | null;
}

interface Limits {
  readonly lower: number | null;
  readonly upper: number | null;
}

const holds = ({ lower, upper }: Limits, truth: number) => lower !== null && upper !== null && lower <= truth && truth <= upper;

/** Every cell has its own seed, so that one can be run again alone. */
function share(repeats: number, seed: number, once: (random: Random) => readonly boolean[]): number[] {
  const random = seededRandom(seed);
  const hits = [0, 0];
  for (let i = 0; i < repeats; i++) {
    once(random).forEach((hit, which) => {
      if (hit) hits[which] = (hits[which] as number) + 1;
    });
  }
  return hits.map((hit) => hit / repeats);
}

function overCells(
  patients: readonly number[],
  seed: number,
  cell: (patients: number, segments: Segments, icc: number, seed: number) => Covered,
): Covered[] {
  let next = seed;
  return patients.flatMap((count) => segmentNumbers.flatMap((segments) => correlations.map((icc) => cell(count, segments, icc, next++))));
}

export function meanCells(repeats: number, seed: number): Covered[] {
  return overCells(patientNumbers, seed, (patients, segments, icc, own) => {
    const [covered = 0, plain = 0] = share(repeats, own, (random) => {
      const rows = normalRows(random, patients, segments, icc);
      return [holds(cr2Mean(rows), 0), holds(plainMean(rows), 0)];
    });
    return { segments, patients: String(patients), icc, covered, plain };
  });
}

export function differenceCells(repeats: number, seed: number): Covered[] {
  return overCells([3], seed, (_, segments, icc, own) => {
    const [covered = 0] = share(repeats, own, (random) => {
      const few = normalRows(random, 3, segments, icc);
      const many = normalRows(random, 20, segments, icc, 3);
      const values = [...few.values, ...many.values];
      const group = values.map((__, i) => (i < few.values.length ? "few" : "many"));
      return [holds(cr2Difference({ values, group, patient: [...few.patient, ...many.patient] }), 0)];
    });
    return { segments, patients: "3 v 20", icc, covered, plain: null };
  });
}

/** The upper limit of agreement: of values of mean 0 and variance 1 it is the normal quantile of 0.975. The lower one is its mirror image. */
export function limitCells(repeats: number, seed: number): Covered[] {
  return overCells([20, 40], seed, (patients, segments, icc, own) => {
    const [covered = 0] = share(repeats, own, (random) => {
      const { limitUpperInterval } = blandAltman(normalRows(random, patients, segments, icc));
      return [limitUpperInterval !== null && holds(limitUpperInterval, normalQuantile(0.975))];
    });
    return { segments, patients: String(patients), icc, covered, plain: null };
  });
}

export function shareCells(repeats: number, seed: number, p: number): Covered[] {
  return overCells(patientNumbers, seed, (patients, segments, icc, own) => {
    const [covered = 0, plain = 0] = share(repeats, own, (random) => {
      const rows = eventRows(random, patients, segments, icc, p);
      const answer = wilsonClustered({ event: rows.values, patient: rows.patient });
      return [holds(answer, p), holds(answer.plain, p)];
    });
    return { segments, patients: String(patients), icc, covered, plain };
  });
}

/** How often the permutation test rejects at 5 % when the means are equal: 8 v 16 patients, one group with 1 to 4 segments, the other with 1 or 2 more often. */
export function permutationRejects(repeats: number, seed: number, icc: number): number {
  const [rejected = 0] = share(repeats, seed, (random) => {
    const first = normalRows(random, 8, "1 to 4", icc);
    const second = [normalRows(random, 8, "1 to 4", icc, 8), normalRows(random, 4, 1, icc, 16), normalRows(random, 4, 2, icc, 20)];
    const values = [...first.values, ...second.flatMap((rows) => rows.values)];
    const patient = [...first.patient, ...second.flatMap((rows) => rows.patient)];
    const group = values.map((_, i) => (i < first.values.length ? "first" : "second"));
    const { p } = permutationDifference({ values, group, patient, seed: random.bits() });
    return [p !== null && p <= 0.05];
  });
  return rejected;
}
