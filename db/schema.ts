import { integer, sqliteTable, text } from "drizzle-orm/sqlite-core";
import { tables } from "@/lib/codebook";
import { columnsOf, omit, pick } from "./columns";
import { identities } from "./identities";

// Tables as drizzle sees them. Constraints, indexes and triggers stand in the migrations: drizzle can't say STRICT or name a trigger.

const entity = () => integer("entity").primaryKey();
const personEntity = () => integer("person_entity").notNull();
const span = () => ({
  entity: integer("entity").notNull(),
  sinceBatch: integer("since_batch").notNull(),
  untilBatch: integer("until_batch").notNull(),
});

// Identities: what a row is, for ever
export const personId = sqliteTable("person_id", { entity: entity(), ...pick(columnsOf(tables.person), identities.person.own) });
export const bodyMeasureId = sqliteTable("body_measure_id", {
  entity: entity(),
  personEntity: personEntity(),
  ...pick(columnsOf(tables.bodyMeasure), identities.bodyMeasure.own),
});
export const segmentId = sqliteTable("segment_id", {
  entity: entity(),
  personEntity: personEntity(),
  ...pick(columnsOf(tables.segment), identities.segment.own),
});
export const visitId = sqliteTable("visit_id", {
  entity: entity(),
  segmentEntity: integer("segment_entity").notNull(),
  ...pick(columnsOf(tables.visit), identities.visit.own),
});
export const eventId = sqliteTable("event_id", {
  entity: entity(),
  personEntity: personEntity(),
  segmentEntity: integer("segment_entity"),
  ...pick(columnsOf(tables.event), identities.event.own),
});
export const scoreId = sqliteTable("score_id", {
  entity: entity(),
  personEntity: personEntity(),
  ...pick(columnsOf(tables.score), identities.score.own),
});

// Versions: what was known of it, from batch to batch
export const person = sqliteTable("person", { ...span(), ...omit(columnsOf(tables.person), tables.person.key) });
export const bodyMeasure = sqliteTable("body_measure", { ...span(), ...omit(columnsOf(tables.bodyMeasure), tables.bodyMeasure.key) });
export const segment = sqliteTable("segment", { ...span(), ...omit(columnsOf(tables.segment), tables.segment.key) });
export const visit = sqliteTable("visit", { ...span(), ...omit(columnsOf(tables.visit), tables.visit.key) });
export const event = sqliteTable("event", { ...span(), ...omit(columnsOf(tables.event), tables.event.key) });
export const score = sqliteTable("score", { ...span(), ...omit(columnsOf(tables.score), tables.score.key) });

export const batchKinds = ["intake", "undo", "correction", "settings", "join", "part", "erasure"] as const;

/** One row a batch, numbered 1, 2, 3 … without gaps. Counts are rows that the batch brought in, changed or put back. */
export const batch = sqliteTable("batch", {
  batch: integer("batch").primaryKey(),
  kind: text("kind", { enum: batchKinds }).notNull(),
  at: text("at").notNull(),
  undoes: integer("undoes"),
  persons: integer("persons").notNull(),
  bodyMeasures: integer("body_measures").notNull(),
  segments: integer("segments").notNull(),
  visits: integer("visits").notNull(),
  events: integer("events").notNull(),
  scores: integer("scores").notNull(),
  contentHash: text("content_hash").notNull(),
});

/** How often each finding was kept when a batch was committed: the only trace of a finding that the registry is told. */
export const batchFinding = sqliteTable("batch_finding", {
  batch: integer("batch").notNull(),
  code: text("code").notNull(),
  count: integer("count").notNull(),
});

/** The unit's key in its two sealed forms. Opening either takes a secret that the registry never sees. */
export const unitKey = sqliteTable("unit_key", {
  form: text("form", { enum: ["passphrase", "recovery"] }).primaryKey(),
  keyId: text("key_id").notNull(),
  iterations: integer("iterations").notNull(),
  salt: text("salt").notNull(),
  iv: text("iv").notNull(),
  sealed: text("sealed").notNull(),
});

/** The unit's own lists, one version a change. */
export const settings = sqliteTable("settings", { ...span(), content: text("content").notNull() });

/** One row: how many erasures there were, and whether one is running (only then is a row of a person deleted). */
export const erasure = sqliteTable("erasure", {
  only: integer("only").primaryKey(),
  count: integer("count").notNull(),
  running: integer("running", { mode: "boolean" }).notNull(),
});

/** Version tables by their name in the codebook. */
export const versions = { person, bodyMeasure, segment, visit, event, score };
