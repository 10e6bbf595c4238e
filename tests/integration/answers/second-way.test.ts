import path from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ask, complicationMatrix, isHealing } from "@/lib/answers";
import { demoRegistry } from "../demo-registry";

/**
 * Measures worked out a second time in SQL, straight from the registry's tables, without a line of the answering code.
 * The demo has no visits here, so nothing is derived from them.
 */
let registry: Awaited<ReturnType<typeof demoRegistry>>;
let sql: Database.Database;

beforeAll(async () => {
  registry = await demoRegistry();
  sql = new Database(path.join(registry.folder, "registry.sqlite"), { readonly: true });
});
afterAll(async () => {
  sql.close();
  await registry[Symbol.asyncDispose]();
});

const open = "until_batch = 2147483647";
const segments = `SELECT i.bone, i.side, i.surgery_day, i.person_entity, s.* FROM segment s JOIN segment_id i ON i.entity = s.entity WHERE s.${open}`;
const lengthened = `procedure IS NOT 'transport' AND bone IN ('femur', 'tibia')`;

function close(ours: number | null | undefined, theirs: number, what = ""): void {
  expect(Math.abs((ours ?? Number.NaN) - theirs), what).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(theirs)));
}

const notStill = `NOT (consolidation_day IS NULL AND distraction_start_day IS NOT NULL AND distraction_end_day IS NULL
  AND full_weight_bearing_day IS NULL AND fixator_removal_day IS NULL AND implant_removal_day IS NULL
  AND max(ifnull(last_not_healed_day, -1e9), ifnull(last_film_day, -1e9)) - distraction_start_day <= 240
  AND ifnull(last_follow_up_day, -1e9) - distraction_start_day <= 240)`;

describe.each([
  ["surgery-to-consolidation", "surgery_day", "consolidation_day"],
  ["distraction-to-consolidation", "distraction_start_day", "consolidation_day"],
  ["maturation", "distraction_end_day", "consolidation_day"],
  ["weight-bearing", "surgery_day", "full_weight_bearing_day"],
  ["distraction", "distraction_start_day", "distraction_end_day"],
])("%s by bone", (id, from, to) => {
  test("mean and n", async () => {
    const rows = sql
      .prepare(
        `SELECT bone, count(*) AS n, avg((${to} - ${from}) * 10.0 / gain_mm) AS mean FROM (${segments})
         WHERE procedure IS NOT 'transport' AND osteotomy_levels IS NOT 2 AND gain_mm >= 10 AND ${notStill}
         AND ${from} IS NOT NULL AND ${to} IS NOT NULL GROUP BY bone`,
      )
      .all() as { bone: string; n: number; mean: number }[];
    const answer = await ask(registry, { measure: id, by: ["bone"] });
    if (!isHealing(answer)) throw new Error("a clock answers as healing");
    expect(rows.length).toBeGreaterThan(2);
    for (const row of rows) {
      const group = answer.groups.find(({ key }) => key.bone === row.bone);
      expect(group?.mean.n, row.bone).toBe(row.n);
      close(group?.mean.estimate, row.mean, row.bone);
    }
  });
});

test("gain less plan, and the share within 10 mm", async () => {
  const row = sql
    .prepare(
      `SELECT count(*) AS n, avg(gain_mm - planned_gain_mm) AS mean, sum(abs(gain_mm - planned_gain_mm) <= 10) AS x
       FROM (${segments}) WHERE ${lengthened} AND ${notStill} AND gain_mm IS NOT NULL AND planned_gain_mm > 0`,
    )
    .get() as { n: number; mean: number; x: number };
  const error = await ask(registry, { measure: "gain-error" });
  const share = await ask(registry, { measure: "gain-within-10mm" });
  if (isHealing(error) || isHealing(share)) throw new Error("gain is no clock");
  expect(error.groups[0]?.n).toBe(row.n);
  close(error.groups[0]?.mean?.estimate, row.mean);
  expect(share.groups[0]?.share).toMatchObject({ x: row.x, n: row.n });
});

test("events over segments whose events were looked for", async () => {
  const looked = `SELECT entity FROM (${segments}) WHERE events_looked_for = 'fully' AND procedure IS NOT 'transport'`;
  const { n } = sql.prepare(`SELECT count(*) AS n FROM (${looked})`).get() as { n: number };
  const { events } = sql
    .prepare(
      `SELECT count(*) AS events FROM event e JOIN event_id i ON i.entity = e.entity
       WHERE e.${open} AND e.planned IS NOT 1 AND e.consequence_of IS NULL
       AND (i.segment_entity IN (${looked}) OR (i.segment_entity IS NULL AND i.person_entity IN (SELECT person_entity FROM (${segments}) WHERE entity IN (${looked}))))`,
    )
    .get() as { events: number };
  const answer = await ask(registry, { measure: "complication-events-per-segment" });
  if (isHealing(answer)) throw new Error("events are no clock");
  expect(answer.groups[0]?.rate).toMatchObject({ events, exposure: n });
  const matrix = await complicationMatrix(registry, {});
  expect(matrix.groups[0]?.rows.reduce((sum, row) => sum + row.events, 0)).toBe(events);
});

test("excluded and measured add up in every measure and group", async () => {
  const { measureList } = await import("@/lib/answers");
  for (const { id, of } of measureList()) {
    const answer = await ask(registry, { measure: id, by: ["device"] });
    for (const group of answer.groups) {
      const excluded = Object.values(group.excluded).reduce((a, b) => a + b, 0);
      const whole = of === "person" ? group.patients : group.segments;
      const counted = "healed" in group ? (group.healed ?? 0) + (group.censored ?? 0) + (group.ended ?? 0) : (group.n ?? 0);
      expect(`${id} ${group.label}: ${counted + excluded}`).toBe(`${id} ${group.label}: ${whole}`);
    }
  }
});
