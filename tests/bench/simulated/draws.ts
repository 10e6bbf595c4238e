import type { Random } from "@/lib/stats";

/** Rows of simulated patients. */
export interface Rows {
  readonly values: number[];
  readonly patient: number[];
}

/** How many segments each patient has: the same number, or 1, 2, 3, 4, 1, 2 … in turn. */
export type Segments = 1 | 2 | 3 | 4 | "1 to 4";

export const segmentsOf = (segments: Segments, patient: number) => (segments === "1 to 4" ? (patient % 4) + 1 : segments);

/** Standard normal, Box and Muller 1958. */
export function normal({ uniform }: Random): number {
  return Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
}

/** Values of mean 0 and variance 1 with the given correlation within a patient. */
export function normalRows(random: Random, patients: number, segments: Segments, icc: number, from = 0): Rows {
  return rowsOf(patients, segments, from, () => {
    const own = Math.sqrt(icc) * normal(random);
    return () => own + Math.sqrt(1 - icc) * normal(random);
  });
}

/** 0 or 1 with mean p: each row copies its patient's draw with probability √ICC, else is drawn anew (Lunn AD, Davies SJ. Biometrika 1998;85:487-490). */
export function eventRows(random: Random, patients: number, segments: Segments, icc: number, p: number): Rows {
  const event = () => (random.uniform() < p ? 1 : 0);
  return rowsOf(patients, segments, 0, () => {
    const own = event();
    return () => (random.uniform() < Math.sqrt(icc) ? own : event());
  });
}

function rowsOf(patients: number, segments: Segments, from: number, start: () => () => number): Rows {
  const rows: Rows = { values: [], patient: [] };
  for (let c = 0; c < patients; c++) {
    const draw = start();
    for (let j = 0; j < segmentsOf(segments, c); j++) {
      rows.values.push(draw());
      rows.patient.push(from + c);
    }
  }
  return rows;
}
