import fc from "fast-check";
import { expect, test } from "vitest";
import type { StrippedRows } from "@/lib/intake";
import { type Registry, RowsRefused } from "@/lib/registry";
import { at, freshWithLists, heldBy } from "./folder";
import { hashOf, Model, sorted } from "./model";
import { anEvent, aPerson, aSegment, aVisit, personKey, row, rowsOf } from "./rows";

// few keys and few values, so that sheets meet: half of the fields are blank, values repeat, children come before their parents
const n = fc.constantFrom(1, 2, 3);
const maybe = <T>(...values: readonly T[]) => fc.constantFrom(null, ...values);
const bone = fc.constantFrom("femur" as const, "tibia" as const);
const surgeryDay = fc.constantFrom(1000, -7);
const onset = maybe(0, 1010);

// what is drawn is short, so that a walk that fails can be read; rows are made of it in the walk
const sheet = fc.record({
  person: fc.array(fc.record({ n, sex: maybe("female" as const, "male" as const), diabetes: maybe(true, false), undated: fc.nat(19) }), {
    maxLength: 2,
  }),
  bodyMeasure: fc.array(fc.record({ n, bodyDay: fc.constantFrom(-40, 1000), statureMm: maybe(1600, 1610.5) }), { maxLength: 1 }),
  segment: fc.array(fc.record({ n, bone, surgeryDay, gainMm: maybe(0, 50, 52.5), device: maybe("other" as const) }), { maxLength: 2 }),
  visit: fc.array(fc.record({ n, bone, surgeryDay, visitDay: fc.constantFrom(1030, 1060), cortices: maybe(0, 3) }), { maxLength: 2 }),
  event: fc.array(
    fc.record({ n, onsetDay: onset, planned: maybe(true, false), of: fc.option(fc.record({ bone, surgeryDay })), half: fc.nat(19) }),
    { maxLength: 2 },
  ),
  score: fc.array(fc.record({ n, scoreDay: fc.constantFrom(5, 6), scoreValue: fc.constantFrom(0, 61.5) }), { maxLength: 1 }),
});
type Sheet = typeof sheet extends fc.Arbitrary<infer S> ? S : never;

const rowsFrom = (drawn: Sheet): StrippedRows =>
  rowsOf({
    person: drawn.person.map(({ n, undated, ...fields }) => aPerson(n, { ...fields, line: undated === 0 ? "undated" : "dated" })),
    bodyMeasure: drawn.bodyMeasure.map(({ n, ...fields }) => row("bodyMeasure", { person: personKey(n), ...fields })),
    segment: drawn.segment.map(({ n, ...fields }) => aSegment(n, fields)),
    visit: drawn.visit.map(({ n, visitDay, ...fields }) => aVisit(n, visitDay, fields)),
    event: drawn.event.map(({ n, of, half, ...fields }) => {
      const segment = half === 0 ? { bone: "femur" as const } : of ? { ...of, side: "left" as const } : {};
      return anEvent(n, { ...fields, ...segment });
    }),
    score: drawn.score.map(({ n, ...fields }) => row("score", { person: personKey(n), scoreCode: "a-score", ...fields })),
  });

type Step = { readonly commit: Sheet } | { readonly undo: number } | "again";
const step: fc.Arbitrary<Step> = fc.oneof(
  { weight: 3, arbitrary: sheet.map((commit) => ({ commit })) },
  { weight: 2, arbitrary: fc.constant("again" as const) },
  { weight: 4, arbitrary: fc.nat(20).map((undo) => ({ undo })) },
);
/** The first sheet: parents of much of what may come, less a person and a bone that children may name before they are held. */
const first = rowsOf({
  person: [aPerson(1), aPerson(2)],
  segment: [1, 2].flatMap((person) => [aSegment(person), aSegment(person, { surgeryDay: -7 })]),
});
const walks = fc.array(step, { minLength: 3, maxLength: 14 });

const seen = { commits: 0, nothing: 0, refused: 0, undos: 0, blocked: 0 };

async function commit(registry: Registry, model: Model, rows: StrippedRows): Promise<void> {
  const expected = model.commit(rows);
  const done = await registry.commit(rows, { at }).catch((error: unknown) => {
    if (error instanceof RowsRefused) return "refused" as const;
    throw error;
  });
  expect(done === "refused" ? done : done.batch).toBe(expected);
  seen[expected === "refused" ? "refused" : expected === null ? "nothing" : "commits"] += 1;
}

async function undo(registry: Registry, model: Model, drawn: number): Promise<void> {
  const batch = (drawn % (model.snapshots.length - 2)) + 2;
  const expected = model.undo(batch);
  const done = await registry.undo(batch, { at });
  expect("batch" in done ? done.batch : done).toEqual(expected);
  seen[typeof expected === "number" ? "undos" : "blocked"] += 1;
}

async function walk(registry: Registry, model: Model, steps: readonly Step[]): Promise<void> {
  let rows = first;
  await commit(registry, model, rows);
  for (const step of steps) {
    if (step !== "again" && "undo" in step) await undo(registry, model, step.undo);
    else {
      if (step !== "again") rows = rowsFrom(step.commit);
      await commit(registry, model, rows);
    }
  }
}

test("any history of sheets and undos holds what a plain model of the promises holds", async () => {
  await fc.assert(
    fc.asyncProperty(walks, async (steps) => {
      const [registry, model] = [await freshWithLists(), new Model()];
      // the unit's lists are a batch of their own, which changes no row and is never undone here
      model.add(model.now, null);
      await walk(registry, model, steps);
      expect(await registry.state()).toEqual({ batch: model.snapshots.length - 1, erasures: 0 });
      expect(await heldBy(registry)).toEqual(sorted(model.now));
      const hashes = await Promise.all(model.snapshots.map((_, i) => registry.contentHash(i)));
      expect(hashes).toEqual(model.snapshots.map(hashOf));
      expect((await registry.batches()).map(({ contentHash }) => contentHash)).toEqual(hashes.slice(1));
      await registry.close();
    }),
    { numRuns: 100 },
  );
  // the walks went everywhere: else the equality above says little
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(10);
});
