import path from "node:path";
import Database from "better-sqlite3";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { ask, complicationMatrix, followUp, isHealing } from "@/lib/answers";
import { followUpWindows } from "@/lib/outcomes";
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
  ["fixator", "surgery_day", "fixator_removal_day"],
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

const leg = `SELECT * FROM (${segments}) WHERE ${lengthened}`;
const gained = `SELECT * FROM (${leg}) WHERE ${notStill} AND gain_mm IS NOT NULL`;
const planned = `SELECT *, gain_mm - planned_gain_mm AS error FROM (${gained}) WHERE planned_gain_mm > 0`;

async function groupOf(measure: string) {
  const answer = await ask(registry, { measure });
  if (isHealing(answer)) throw new Error(`${measure} is a clock`);
  return answer.groups[0];
}

describe.each([
  ["gain", "gain_mm", gained],
  ["gain-error", "error", planned],
  ["gain-error-relative", "error * 100.0 / planned_gain_mm", planned],
  ["gain-accuracy", "100 - abs(error) * 100.0 / planned_gain_mm", planned],
  ["gain-percent", "gain_mm * 100.0 / bone_length_before_mm", `SELECT * FROM (${gained}) WHERE bone_length_before_mm IS NOT NULL`],
  ["gain-lost", "gain_mm - gain_final_mm", `SELECT * FROM (${gained}) WHERE gain_final_mm IS NOT NULL`],
  [
    "alignment-axis-change",
    "axis_deviation_final_mm - axis_deviation_before_mm",
    `SELECT * FROM (${segments}) WHERE bone IN ('femur', 'tibia') AND axis_deviation_final_mm IS NOT NULL AND axis_deviation_before_mm IS NOT NULL`,
  ],
])("%s", (id, value, rows) => {
  test("n, mean, and mean of patients", async () => {
    const row = sql.prepare(`SELECT count(*) AS n, avg(${value}) AS mean FROM (${rows})`).get() as { n: number; mean: number };
    const patients = sql
      .prepare(`SELECT avg(mean) AS mean FROM (SELECT avg(${value}) AS mean FROM (${rows}) GROUP BY person_entity)`)
      .get() as { mean: number };
    const group = await groupOf(id);
    expect(row.n).toBeGreaterThan(50);
    expect(group?.n).toBe(row.n);
    close(group?.mean?.estimate, row.mean);
    close(group?.patientMean?.estimate, patients.mean);
  });
});

test.each([
  ["gain-within-5mm", "abs(error) <= 5"],
  ["gain-within-10mm", "abs(error) <= 10"],
  ["gain-within-10percent", "abs(error) * 100.0 / planned_gain_mm <= 10"],
  ["gain-goal-reached", "error >= -5"],
])("%s", async (id, within) => {
  const row = sql.prepare(`SELECT count(*) AS n, sum(${within}) AS x FROM (${planned})`).get() as { n: number; x: number };
  expect((await groupOf(id))?.share).toMatchObject(row);
});

const bothLegs = `SELECT person_entity AS person FROM (${leg}) GROUP BY person_entity HAVING count(DISTINCT side) = 2`;

/** The latest body measure of an occasion that holds what is asked. */
const body = (occasion: string, held: string) =>
  `SELECT i.person_entity AS person, max(i.body_day) AS day, b.* FROM body_measure b JOIN body_measure_id i ON i.entity = b.entity
   WHERE b.${open} AND occasion = '${occasion}' AND ${held} GROUP BY i.person_entity`;

test("gain of stature: all that both legs gained, halved", async () => {
  const row = sql
    .prepare(
      `SELECT count(*) AS n, avg(total) AS mean FROM (
         SELECT sum(gain_mm) / 2.0 AS total FROM (${leg}) WHERE person_entity IN (${bothLegs})
         GROUP BY person_entity HAVING count(*) = count(gain_mm))`,
    )
    .get() as { n: number; mean: number };
  const group = await groupOf("stature-gain");
  expect(row.n).toBeGreaterThan(20);
  expect(group?.n).toBe(row.n);
  close(group?.mean?.estimate, row.mean);
});

test.each([
  ["proportion-sitting-height", "sitting_height_mm", "sitting_height_mm * 1.0 / stature_mm"],
  ["proportion-leg", "sitting_height_mm", "1 - sitting_height_mm * 1.0 / stature_mm"],
  ["proportion-span", "arm_span_mm", "arm_span_mm * 1.0 / stature_mm"],
])("%s: its change within persons lengthened on both sides", async (id, column, ratio) => {
  const of = (occasion: string) =>
    `SELECT person, ${ratio} AS ratio FROM (${body(occasion, `stature_mm IS NOT NULL AND ${column} IS NOT NULL`)})`;
  const row = sql
    .prepare(
      `SELECT count(*) AS n, avg(a.ratio - b.ratio) AS mean FROM (${of("final")}) a JOIN (${of("before")}) b ON a.person = b.person
       WHERE a.person IN (${bothLegs})`,
    )
    .get() as { n: number; mean: number };
  const group = await groupOf(`${id}.change`);
  expect(row.n).toBeGreaterThan(20);
  expect(group?.n).toBe(row.n);
  close(group?.mean?.estimate, row.mean);
});

test("tibia to femur before, of persons of whom every bone was measured", async () => {
  const bones = ["femur_left_mm", "femur_right_mm", "tibia_left_mm", "tibia_right_mm"];
  const held = bones.map((bone) => `${bone} IS NOT NULL`).join(" AND ");
  const rows = sql
    .prepare(
      `SELECT person, (tibia_left_mm / femur_left_mm + tibia_right_mm / femur_right_mm) / 2 AS ratio
       FROM (${body("before", held)}) WHERE person IN (${bothLegs})`,
    )
    .all() as { person: number; ratio: number }[];
  const own = new Map(((await groupOf("proportion-tibia-femur.before"))?.rows ?? []).map(({ person, value }) => [person, value]));
  expect(rows.length).toBeGreaterThan(20);
  for (const { person, ratio } of rows) close(own.get(person), ratio, String(person));
});

test("follow-up: who was seen in each window, and how complete it is", async () => {
  const days = [
    "last_follow_up",
    "last_film",
    "last_not_healed",
    "consolidation",
    "full_weight_bearing",
    "fixator_removal",
    "implant_removal",
  ];
  const seen = days
    .map((day) => `SELECT entity, ${day}_day - surgery_day AS day FROM (${segments}) WHERE ${day}_day > surgery_day`)
    .join(" UNION ALL ");
  const [group] = (await followUp(registry, {})).groups;
  for (const { id, counts } of group?.windows ?? []) {
    const { middle, around } = followUpWindows.find((window) => window.id === id) ?? { middle: 0, around: 0 };
    const row = sql
      .prepare(`SELECT count(DISTINCT entity) AS n FROM (${seen}) WHERE day BETWEEN ? AND ?`)
      .get(middle - around, middle + around) as { n: number };
    expect(counts.seen, id).toBe(row.n);
    expect(Object.values(counts).reduce((a, b) => a + b, 0)).toBe(group?.segments);
  }
  // from the middle of the quarter of surgery to the latest day on which anyone was seen
  const followed = `SELECT s.person_entity, s.surgery_day, s.surgery_year * 365.25 + (s.surgery_quarter - 0.5) * 365.25 / 4 AS middle,
    max(0, ifnull((SELECT max(day) FROM (${seen}) x WHERE x.entity = s.entity), 0)) AS last FROM (${segments}) s`;
  const row = sql
    .prepare(
      `WITH followed AS (${followed}), closing AS (SELECT max(middle + last) AS at FROM followed),
       persons AS (SELECT person_entity AS person, max(surgery_day + last) - min(surgery_day) AS observed,
         max(max(0, (SELECT at FROM closing) - middle)) AS potential FROM followed GROUP BY person_entity)
       SELECT sum(min(observed, potential)) AS observed,
         sum(CASE WHEN person IN (SELECT entity FROM person WHERE ${open} AND follow_up_status = 'died') THEN min(observed, potential) ELSE potential END) AS potential
       FROM persons`,
    )
    .get() as { observed: number; potential: number };
  close(group?.completeness?.observed, row.observed, "observed");
  close(group?.completeness?.potential, row.potential, "potential");
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

test("over every other denominator: patients, segments with any, centimetres, operations", async () => {
  const looked = `SELECT * FROM (${segments}) WHERE events_looked_for = 'fully' AND procedure IS NOT 'transport'`;
  const counted = `SELECT i.segment_entity AS segment, e.* FROM event e JOIN event_id i ON i.entity = e.entity
    WHERE e.${open} AND e.planned IS NOT 1 AND e.consequence_of IS NULL`;
  const own = (where: string) => `SELECT segment FROM (${counted}) WHERE ${where}`;
  const one = (text: string) => Object.values(sql.prepare(text).get() as Record<string, number>)[0];
  const patients = one(`SELECT count(DISTINCT person_entity) FROM (${looked})`);
  // the demo's events all belong to a segment
  expect(one(`SELECT count(*) FROM event_id WHERE segment_entity IS NULL`)).toBe(0);
  expect((await groupOf("complication-patients-with-any"))?.share).toMatchObject({
    x: one(`SELECT count(DISTINCT person_entity) FROM (${looked}) WHERE entity IN (${own("1")})`),
    n: patients,
  });
  expect((await groupOf("complication-segments-with-any"))?.share).toMatchObject({
    x: one(`SELECT count(*) FROM (${looked}) WHERE entity IN (${own("1")})`),
    n: one(`SELECT count(*) FROM (${looked})`),
  });
  const events = `SELECT count(*) FROM (${counted}) WHERE segment IN (SELECT entity FROM (${looked}))`;
  expect((await groupOf("complication-events-per-patient"))?.rate).toMatchObject({ events: one(events), exposure: patients });
  const perCm = (await groupOf("complication-events-per-10cm"))?.rate;
  expect(perCm?.events).toBe(one(events.replace("FROM (" + looked, "FROM (SELECT * FROM (" + looked + ") WHERE gain_mm > 0")));
  close(perCm?.exposure, one(`SELECT sum(gain_mm) / 10.0 FROM (${looked}) WHERE gain_mm > 0`) ?? Number.NaN);
  const serious = `SELECT * FROM (${segments}) WHERE events_looked_for IN ('fully', 'serious-only') AND procedure IS NOT 'transport'`;
  expect((await groupOf("operations-per-segment"))?.rate).toMatchObject({
    events: one(
      `SELECT count(*) FROM (${counted}) WHERE handling IN ('operation-under-anaesthesia', 'implant-exchanged') AND segment IN (SELECT entity FROM (${serious}))`,
    ),
    exposure: one(`SELECT count(*) FROM (${serious})`),
  });
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
