import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { cr2Mean, cr2Regression, kaplanMeier, patientBootstrap, timeModel } from "@/lib/stats";
import { cr2Data, kaplanMeierData, timeModelData } from "./data";

// npm run bench:stats [RUNS]: ours and R's times on the same data in one run, medians, and their ratio.

const runs = Number(process.argv[2] ?? 5);
const [curve, clustered, model] = [kaplanMeierData(), cr2Data(), timeModelData()] as Readonly<Record<string, number[]>>[] as [
  Named,
  Named,
  Named,
];
type Named = Readonly<Record<"times" | "event" | "values" | "patient" | "x1" | "x2", number[]>>;

const design = (columns: Named) => columns.x1.map((x, i) => [x, columns.x2[i] as number]);
const [clusteredDesign, modelDesign] = [design(clustered), design(model)];

const ours: Readonly<Record<string, readonly [what: string, run: () => object]>> = {
  "kaplan-meier": ["Kaplan–Meier, 10⁶ rows", () => kaplanMeier({ times: curve.times, event: curve.event })],
  "cr2-mean": ["CR2 mean, 5 000 segments", () => cr2Mean({ values: clustered.values, patient: clustered.patient })],
  "cr2-regression": [
    "CR2 regression, 5 000 segments, two covariates",
    () => cr2Regression({ values: clustered.values, patient: clustered.patient, design: clusteredDesign }),
  ],
  "patient-bootstrap": [
    `patient bootstrap of a mean, 10⁴ × ${new Set(clustered.patient).size} patients`,
    () => patientBootstrap({ values: clustered.values, patient: clustered.patient, repeats: 10_000, seed: 1 }),
  ],
  "time-model": [
    "log-normal time model, 10⁵ rows, robust by patient",
    () => timeModel({ times: model.times, event: model.event, patient: model.patient, design: modelDesign }),
  ],
};

function seconds(run: () => object): number {
  run(); // the first run also compiles
  const taken = Array.from({ length: runs }, () => {
    const start = performance.now();
    run();
    return (performance.now() - start) / 1000;
  });
  return taken.sort((a, b) => a - b)[runs >> 1] as number;
}

function timesOfR(): Readonly<Record<string, number>> {
  const folder = mkdtempSync(join(tmpdir(), "bench-"));
  const held = { "kaplan-meier": curve, cr2: clustered, "time-model": model };
  for (const [name, columns] of Object.entries(held)) writeFileSync(join(folder, `${name}.json`), JSON.stringify(columns));
  const run = spawnSync("Rscript", ["--vanilla", join(import.meta.dirname, "bench.R"), folder, String(runs)], { encoding: "utf8" });
  rmSync(folder, { recursive: true });
  if (run.status !== 0) throw new Error(`bench.R failed: ${run.stderr ?? "no R"}`);
  return JSON.parse(run.stdout) as Readonly<Record<string, number>>;
}

const theirs = timesOfR();
console.log(`median of ${runs} runs, seconds\n`);
for (const [name, [what, run]] of Object.entries(ours)) {
  const [own, r] = [seconds(run), theirs[name] as number];
  console.log(`${what}: ours ${own.toFixed(4)}, R ${r.toFixed(4)}, ours/R ${(own / r).toPrecision(2)}`);
}
