import { normalQuantile, seededRandom } from "@/lib/stats";

type Columns = Readonly<Record<string, readonly number[]>>;

/** Invented columns for timing only, by a seed: patients with one to four rows who are alike. */
function rows(n: number, seed: number) {
  const { uniform, below } = seededRandom(seed);
  const normal = () => normalQuantile((Math.floor(uniform() * 1e6) + 0.5) / 1e6);
  const patient: number[] = [];
  for (let id = 0; patient.length < n; id++) for (let k = below(3) + 1; k > 0 && patient.length < n; k--) patient.push(id);
  const own = new Map<number, number>();
  const effect = patient.map((id) => {
    if (!own.has(id)) own.set(id, normal());
    return own.get(id) as number;
  });
  const x1 = patient.map(() => normal());
  const x2 = patient.map(() => below(2));
  const values = patient.map((_, i) => 40 + 6 * (effect[i] as number) + 2 * (x1[i] as number) + 3 * (x2[i] as number) + 5 * normal());
  return { patient, x1, x2, values, uniform };
}

/** Whole days to an event, a fifth censored; logs of the days follow the covariates. */
function timed(n: number, seed: number) {
  const { patient, x1, x2, values, uniform } = rows(n, seed);
  const event = patient.map(() => (uniform() < 0.8 ? 1 : 0));
  const times = values.map((value, i) =>
    Math.max(1, Math.round(Math.exp(5 + (value - 40) / 20) * (event[i] === 1 ? 1 : 0.3 + 0.7 * uniform()))),
  );
  return { times, event, patient, x1, x2 };
}

export function kaplanMeierData(): Columns {
  const { times, event } = timed(1_000_000, 1);
  return { times, event };
}

export function cr2Data(): Columns {
  const { values, patient, x1, x2 } = rows(5_000, 2);
  return { values, patient, x1, x2 };
}

export function timeModelData(): Columns {
  return timed(100_000, 3);
}
