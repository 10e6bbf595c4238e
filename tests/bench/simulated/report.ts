import { binomialAtLeast, binomialCdf, wilsonClustered } from "@/lib/stats";
import { type Covered, correlations, patientNumbers, segmentNumbers } from "./cells";

const percent = (share: number) => (share * 100).toFixed(1);

/** One row a number of patients and segments, one column an ICC; with `plain` the naive coverage stands in brackets. */
export function table(cells: readonly Covered[]): string {
  const patients = [...new Set(cells.map((cell) => cell.patients))];
  const head = `| patients | segments each | ${correlations.map((icc) => `ICC ${icc}`).join(" | ")} |\n|---|---|${"---|".repeat(correlations.length)}`;
  const rows = patients.flatMap((count) =>
    segmentNumbers.map((segments) => {
      const own = correlations.map((icc) =>
        cells.find((cell) => cell.patients === count && cell.segments === segments && cell.icc === icc),
      );
      return `| ${count} | ${segments} | ${own.map((cell) => (cell ? written(cell) : "")).join(" | ")} |`;
    }),
  );
  return [head, ...rows].join("\n");
}

function written({ covered, plain }: Covered): string {
  return plain === null ? percent(covered) : `${percent(covered)} (${percent(plain)})`;
}

export function lowest(cells: readonly Covered[]): Covered {
  return cells.reduce((least, cell) => (cell.covered < least.covered ? cell : least));
}

export function place({ patients, segments, icc, covered }: Covered): string {
  return `${percent(covered)} % at ${patients} patients, ${segments} segments each, ICC ${icc}`;
}

/** Exact coverage of the share with one segment a patient: the binomial probabilities of the counts whose interval holds p. */
export function exactCoverage(p: number): string {
  return patientNumbers
    .map((n) => {
      const held = Array.from({ length: n + 1 }, (_, x) => x).filter((x) => {
        const { lower, upper } = wilsonClustered({
          event: Array.from({ length: n }, (__, i) => (i < x ? 1 : 0)),
          patient: Array.from({ length: n }, (__, i) => i),
        });
        return lower !== null && upper !== null && lower <= p && p <= upper;
      });
      const probability = held.reduce((sum, x) => sum + binomialCdf(x, n, p) + binomialAtLeast(x, n, p) - 1, 0);
      return `${percent(probability)} % with ${n}`;
    })
    .join(", ");
}
