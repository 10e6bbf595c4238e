import fc from "fast-check";
import { afterEach, expect, test } from "vitest";
import type { StrippedRows } from "@/lib/intake";
import { type Registry, RowsRefused } from "@/lib/registry";
import { at, fresh, heldBy } from "./folder";
import { hashOf, Model, sorted } from "./model";
import { anEvent, aPerson, aSegment, aVisit, personKey, row, rowsOf } from "./rows";

// few keys and few values, so that sheets meet: half of the fields are blank, values repeat, parents are missing now and then
const n = fc.constantFrom(1, 2, 3);
const maybe = <T>(...values: readonly T[]) => fc.constantFrom(null, ...values);
const bone = fc.constantFrom("femur" as const, "tibia" as const);
const surgeryDay = fc.constantFrom(1000, -7);
const onset = maybe(0, 1010);

const person = fc
  .record({ n, sex: maybe("female" as const, "male" as const), diabetes: maybe(true, false), undated: fc.nat(9) })
  .map(({ n, undated, ...fields }) => aPerson(n, { ...fields, line: undated === 0 ? "undated" : "dated" }));
const segment = fc
  .record({ n, bone, surgeryDay, gainMm: maybe(0, 50, 52.5), device: maybe("other" as const) })
  .map(({ n, ...fields }) => aSegment(n, fields));
const visit = fc
  .record({ n, bone, surgeryDay, visitDay: fc.constantFrom(1030, 1060), cortices: maybe(0, 3) })
  .map(({ n, visitDay, ...fields }) => aVisit(n, visitDay, fields));
const event = fc
  .record({ n, onsetDay: onset, planned: maybe(true, false), of: fc.option(fc.record({ bone, surgeryDay })) })
  .map(({ n, of, ...fields }) => anEvent(n, { ...fields, ...(of ? { ...of, side: "left" as const } : {}) }));
const score = fc
  .record({ n, scoreDay: fc.constantFrom(5, 6), scoreValue: fc.constantFrom(0, 61.5) })
  .map(({ n, ...fields }) => row("score", { person: personKey(n), scoreCode: "a-score", ...fields }));
const bodyMeasure = fc
  .record({ n, bodyDay: fc.constantFrom(-40, 1000), statureMm: maybe(1600, 1610.5) })
  .map(({ n, ...fields }) => row("bodyMeasure", { person: personKey(n), ...fields }));

const sheet = fc
  .record({
    person: fc.array(person, { maxLength: 3 }),
    bodyMeasure: fc.array(bodyMeasure, { maxLength: 1 }),
    segment: fc.array(segment, { maxLength: 3 }),
    visit: fc.array(visit, { maxLength: 2 }),
    event: fc.array(event, { maxLength: 2 }),
    score: fc.array(score, { maxLength: 1 }),
  })
  .map(rowsOf);

type Step = { readonly commit: StrippedRows } | { readonly undo: number };
const step: fc.Arbitrary<Step | "again"> = fc.oneof(
  { weight: 3, arbitrary: sheet.map((commit) => ({ commit })) },
  { weight: 1, arbitrary: fc.constant("again" as const) },
  { weight: 4, arbitrary: fc.nat(20).map((undo) => ({ undo })) },
);
/** The first sheet: parents of much of what may come. */
const everybody = rowsOf({
  person: [aPerson(1), aPerson(2), aPerson(3)],
  segment: [1, 2].flatMap((person) => [aSegment(person), aSegment(person, { bone: "tibia" }), aSegment(person, { surgeryDay: -7 })]),
});
const walks = fc.array(step, { minLength: 3, maxLength: 14 }).map((steps) => {
  const walk: Step[] = [{ commit: everybody }];
  for (const one of steps) walk.push(one === "again" ? (walk.findLast((before) => "commit" in before) ?? { commit: everybody }) : one);
  return walk;
});

const seen = { commits: 0, nothing: 0, refused: 0, undos: 0, blocked: 0 };

async function take(registry: Registry, model: Model, step: Step): Promise<void> {
  if ("commit" in step) {
    const expected = model.commit(step.commit);
    const done = await registry.commit(step.commit, { at }).catch((error: unknown) => {
      if (error instanceof RowsRefused) return "refused" as const;
      throw error;
    });
    expect(done === "refused" ? done : done.batch).toBe(expected);
    seen[expected === "refused" ? "refused" : expected === null ? "nothing" : "commits"] += 1;
    return;
  }
  const newest = model.snapshots.length - 1;
  const batch = (step.undo % newest) + 1;
  const expected = model.undo(batch);
  const done = await registry.undo(batch, { at });
  expect("batch" in done ? done.batch : done).toEqual(expected);
  seen[typeof expected === "number" ? "undos" : "blocked"] += 1;
}

test("any history of sheets and undos holds what a plain model of the promises holds", async () => {
  await fc.assert(
    fc.asyncProperty(walks, async (steps) => {
      const registry = await fresh();
      const model = new Model();
      for (const step of steps) await take(registry, model, step);
      const { batch } = await registry.state();
      expect(batch).toBe(model.snapshots.length - 1);
      expect(await heldBy(registry)).toEqual(sorted(model.now));
      const hashes = await Promise.all(model.snapshots.map((_, i) => registry.contentHash(i)));
      expect(hashes).toEqual(model.snapshots.map(hashOf));
      expect((await registry.batches()).map(({ contentHash }) => contentHash)).toEqual(hashes.slice(1));
      await registry.close();
    }),
    { numRuns: 100 },
  );
  // the walks went everywhere: else the equality above says little
  console.log(JSON.stringify(seen));
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
});

afterEach(() => {
  for (const key of Object.keys(seen)) seen[key as keyof typeof seen] = 0;
});
