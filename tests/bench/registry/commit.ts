import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openRegistry } from "@/lib/registry";
import { anEvent, aPerson, aSegment, personKey, row, rowsOf } from "../../integration/registry/rows";

// npx tsx tests/bench/registry/commit.ts [ROWS]: what a one-sheet file of so many rows costs the registry. Wall time, processor time, memory.

const n = Number(process.argv[2] ?? 100_000);
const sheet = Array.from({ length: n }, (_, i) => i);
const operation = {
  surgeryQuarter: 2,
  auditYear: 2020,
  ageAtSurgeryYears: 34,
  surgeon: personKey(7),
  device: "magnetic-nail",
  entry: "piriformis",
  nailDiameterMm: 10.7,
  nailStrokeMm: 80,
  canalVented: true,
  osteotomyTechnique: "drill-and-osteotome",
  boneLengthBeforeMm: 440.5,
  plannedGainMm: 60,
  prescribedRateMmPerDay: 1,
} as const;
const course = {
  distractionStartDay: 1005,
  distractionEndDay: 1065,
  lastNotHealedDay: 1120,
  lastFilmDay: 1200,
  consolidationDay: 1180,
  fullWeightBearingDay: 1185,
  lastFollowUpDay: 1400,
  consolidationCriterion: "three-of-four",
  endState: "consolidated",
  gainFinalMm: 58,
  eventsLookedFor: "fully",
} as const;
const rows = rowsOf({
  person: sheet.map((i) => aPerson(i, { sex: i % 2 ? "female" : "male", indication: "stature", smoking: "never", diabetes: false })),
  bodyMeasure: sheet.map((i) =>
    row("bodyMeasure", { person: personKey(i), bodyDay: 1000, occasion: "before", bodyDayFrom: "surgery", statureMm: 1580 + (i % 100) }),
  ),
  segment: sheet.map((i) => aSegment(i, { ...operation, ...course, gainMm: 40 + (i % 300) / 10 })),
  event: sheet.filter((i) => i % 3 === 0).map((i) => anEvent(i, { bone: "femur", side: "left", surgeryDay: 1000, onsetDay: 1030 })),
});

async function time(name: string, act: () => Promise<unknown>): Promise<void> {
  const [wall, cpu] = [performance.now(), process.cpuUsage()];
  await act();
  const { user, system } = process.cpuUsage(cpu);
  const [wallMs, cpuMs] = [performance.now() - wall, (user + system) / 1000];
  console.log(
    `${name.padEnd(28)} ${wallMs.toFixed(0)} ms, processor ${cpuMs.toFixed(0)} ms, memory ${(process.memoryUsage().rss / 1e6).toFixed(0)} MB`,
  );
}

const at = "2026-01-31T09:30:00Z";
const folder = mkdtempSync(join(tmpdir(), "lengthbook-bench-"));
const registry = await openRegistry(folder, { create: true });
const columns = ["bone", "device", "gainMm", "surgeryDay", "consolidationDay", "distractionEndDay"];
await time("nothing", async () => undefined);
await time("commit", () => registry.commit(rows, { at }));
await time("the same rows again", () => registry.commit(rows, { at }));
await time("content hash", () => registry.contentHash());
await time("frame of six columns", async () => registry.frameAsOf(await registry.state(), "segment", columns));
await time("the same frame again", async () => registry.frameAsOf(await registry.state(), "segment", columns));
await time("every row held", async () => {
  for await (const _ of registry.held());
});
await time("undo", () => registry.undo(1, { at }));
await time("undo of the undo", () => registry.undo(2, { at }));
await registry.close();
rmSync(folder, { recursive: true });
