import { and, eq, gt, lte } from "drizzle-orm";
import { drizzle } from "drizzle-orm/better-sqlite3";
import { z } from "zod";
import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import { settings as table } from "@/db/schema";
import { ownIndexId, tables } from "@/lib/codebook";
import { hashAsOf } from "../read/content-hash";
import type { Settings } from "../types";
import { requireAt } from "./at";
import { enterBatch, newestBatch, noRows, stateOf } from "./ledger";

const unit = z.string().regex(/^[a-z][a-z0-9-]{1,15}$/);
const word = z.string().regex(/^[a-z][a-z0-9-]{1,31}$/);
const score = z.strictObject({
  code: word,
  range: z.tuple([z.number(), z.number()]).refine(([low, high]) => low < high, "the low end below the high one"),
  direction: z.enum(["higher", "lower"]),
  minimalDifference: z.number().positive().nullable(),
});
/** An index runs from one event to a later one; mm a day only while the bone is being lengthened. */
const index = z
  .strictObject({
    id: z.string().regex(ownIndexId, "own- and small letters, digits or hyphens"),
    name: z.string().regex(/^[\p{L}\p{N}][\p{L}\p{N} ,()-]{0,59}$/u, "a name of letters, digits and blanks, at most sixty"),
    from: z.enum(["surgery", "distraction-start", "distraction-end"]),
    to: z.enum(["distraction-end", "consolidation", "full-weight-bearing", "fixator-removal", "end-of-treatment"]),
    criterion: z.enum(tables.segment.fields.consolidationCriterion.codes).nullable(),
    per: z.enum(["gainMm", "gainFinalMm", "plannedGainMm", "plannedGainFinalMm"]),
    rescue: z.enum(["counted", "competing"]),
    unit: z.enum(["days/cm", "mm/day"]),
  })
  .refine(({ from, to }) => from !== to, "an end after its start")
  .refine(({ unit, to }) => unit === "days/cm" || to === "distraction-end", "mm/day only to distraction-end")
  .refine(({ criterion: read, to }) => read === null || to === "consolidation" || to === "end-of-treatment", "a criterion only of healing");
const shape = z.strictObject({
  units: z.array(unit).min(1),
  scores: z.array(score),
  difficultyScore: word.nullable(),
  auditYearStartsIn: z.int().min(1).max(12),
  toleranceMm: z.number().nonnegative().max(100),
  yearOnly: z.boolean(),
  // settings kept before the unit could have indices of its own hold none
  indices: z
    .array(index)
    .max(20)
    .refine((all) => new Set(all.map(({ id }) => id)).size === all.length, "each id once")
    .default([]),
});

/** What holds until the unit says otherwise: one unit, no scores, audit years from January, a goal reached to 5 mm. */
export const defaultSettings: Settings = {
  units: ["unit-1"],
  scores: [],
  difficultyScore: null,
  auditYearStartsIn: 1,
  toleranceMm: 5,
  yearOnly: false,
  indices: [],
};

/** The unit's settings as of a batch. */
export function settingsAsOf(db: Connection, batch: number): Settings {
  const asOf = and(lte(table.sinceBatch, batch), gt(table.untilBatch, batch));
  const held = drizzle(db).select().from(table).where(asOf).get();
  return held ? shape.parse(JSON.parse(held.content)) : defaultSettings;
}

/** One spelling of the same settings. @throws RangeError naming the setting that can't be */
function canonical(settings: Settings): string {
  const parsed = shape.safeParse(settings);
  if (parsed.success) return JSON.stringify(parsed.data);
  const issue = parsed.error.issues[0];
  throw new RangeError(
    `saveSettings requires settings of the unit, received ${issue?.path.join(".") || "a shape"} that can't be: ${issue?.message}`,
  );
}

/**
 * Keeps changed settings as a batch of their own, within the caller's transaction. Unchanged ones make none.
 * @throws RangeError naming the setting that can't be
 */
export function keepSettings(db: Connection, settings: Settings, at: string): number | null {
  const content = canonical(settings);
  const { batch: newest } = stateOf(db);
  if (content === JSON.stringify(settingsAsOf(db, newest))) return null;
  const batch = newest + 1;
  drizzle(db).update(table).set({ untilBatch: batch }).where(eq(table.untilBatch, open)).run();
  drizzle(db).insert(table).values({ entity: 1, sinceBatch: batch, untilBatch: open, content }).run();
  // no row changes with a setting
  const contentHash = newestBatch(db)?.contentHash ?? hashAsOf(db, 0);
  enterBatch(db, { batch, kind: "settings", at: requireAt(at), counts: noRows, contentHash, undoes: null });
  return batch;
}
