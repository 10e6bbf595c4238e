import { batchKinds } from "./schema";
import { createTable, named, refuse } from "./statements";
import { spanKeys, spanLines, versionTriggers } from "./version-ddl";

const counts = ["persons", "body_measures", "segments", "visits", "events", "scores"] as const;
const inList = (values: readonly string[]) => `IN (${values.map((value) => `'${value}'`).join(", ")})`;
const digits = (n: number) => "[0-9]".repeat(n);
const wholeSecondsUtc = `${digits(4)}-${digits(2)}-${digits(2)}T${digits(2)}:${digits(2)}:${digits(2)}Z`;
const base64 = (column: string, longest: number) =>
  `length(${column}) BETWEEN 16 AND ${longest} AND ${column} NOT GLOB '*[^0-9A-Za-z+/=]*'`;

const batchLines = [
  "batch INTEGER PRIMARY KEY",
  `kind TEXT NOT NULL CONSTRAINT batch_kind_codes CHECK (kind ${inList(batchKinds)})`,
  `at TEXT NOT NULL CONSTRAINT batch_at_utc CHECK (at GLOB '${wholeSecondsUtc}')`,
  "undoes INTEGER",
  ...counts.map((column) => `${column} INTEGER NOT NULL CONSTRAINT batch_${column}_limits CHECK (${column} >= 0)`),
  "content_hash TEXT NOT NULL CONSTRAINT batch_content_hash_hex CHECK (length(content_hash) = 64 AND content_hash NOT GLOB '*[^0-9a-f]*')",
  named("batch_undoes_earlier", "(kind = 'undo') = (undoes IS NOT NULL) AND ifnull(undoes, 0) < batch"),
];

const findingLines = [
  "batch INTEGER NOT NULL",
  "code TEXT NOT NULL CONSTRAINT batch_finding_code_word CHECK (length(code) BETWEEN 3 AND 60 AND code NOT GLOB '*[^a-z0-9-]*')",
  "count INTEGER NOT NULL CONSTRAINT batch_finding_count_limits CHECK (count >= 1)",
  "PRIMARY KEY (batch, code)",
];

const unitKeyLines = [
  "form TEXT PRIMARY KEY NOT NULL CONSTRAINT unit_key_form_codes CHECK (form IN ('passphrase', 'recovery'))",
  "key_id TEXT NOT NULL CONSTRAINT unit_key_key_id_word CHECK (length(key_id) BETWEEN 4 AND 64 AND key_id NOT GLOB '*[^0-9A-Za-z_-]*')",
  "iterations INTEGER NOT NULL CONSTRAINT unit_key_iterations_limits CHECK (iterations BETWEEN 1 AND 100000000)",
  ...["salt", "iv", "sealed"].map(
    (column) => `${column} TEXT NOT NULL CONSTRAINT unit_key_${column}_base64 CHECK (${base64(column, 256)})`,
  ),
];

const settingsLines = () => {
  const [entity = "", since = "", until = "", span = ""] = spanLines("settings", "CONSTRAINT settings_entity_one CHECK (entity = 1)");
  return [entity, since, until, "content TEXT NOT NULL CONSTRAINT settings_content_json CHECK (json_valid(content))", span, ...spanKeys];
};

/** Questions by their result reference: written once, so that a reference answers the same question for ever. */
const questionLines = [
  "stamp TEXT PRIMARY KEY NOT NULL CONSTRAINT question_stamp_hex CHECK (length(stamp) = 12 AND stamp NOT GLOB '*[^0-9a-f]*')",
  "asked TEXT NOT NULL CONSTRAINT question_asked_json CHECK (json_valid(asked))",
];

/** Cohorts by the names that the unit gave them. They are descriptions, not data: a name may be given to another cohort. */
const cohortLines = [
  "name TEXT PRIMARY KEY NOT NULL CONSTRAINT cohort_name_word CHECK (length(name) BETWEEN 1 AND 60 AND name NOT GLOB '*[^0-9a-z-]*')",
  "conditions TEXT NOT NULL CONSTRAINT cohort_conditions_json CHECK (json_valid(conditions))",
];

const erasureLines = [
  "only INTEGER PRIMARY KEY CONSTRAINT erasure_only_one CHECK (only = 1)",
  "count INTEGER NOT NULL CONSTRAINT erasure_count_limits CHECK (count >= 0)",
  "running INTEGER NOT NULL CONSTRAINT erasure_running_flag CHECK (running IN (0, 1))",
];

/** Statements of the ledger: batches, what was found in them, the sealed key, the unit's settings, and the count of erasures. */
export function ledgerDdl(): readonly string[] {
  return [
    createTable("erasure", erasureLines),
    "INSERT INTO erasure (only, count, running) VALUES (1, 0, 0);",
    refuse("erasure_never_falls", "UPDATE ON erasure", "erasure: the count never falls", "NEW.count < OLD.count"),
    refuse("erasure_never_deleted", "DELETE ON erasure", "erasure: the count is never deleted"),
    createTable("batch", batchLines),
    refuse(
      "batch_without_gaps",
      "INSERT ON batch",
      "batch: numbers run without gaps",
      "NEW.batch IS NOT (SELECT ifnull(max(batch), 0) + 1 FROM batch)",
    ),
    refuse("batch_never_changed", "UPDATE ON batch", "batch: a batch is never changed"),
    refuse("batch_never_deleted", "DELETE ON batch", "batch: a batch is never deleted"),
    createTable("batch_finding", findingLines),
    refuse("batch_finding_never_changed", "UPDATE ON batch_finding", "batch_finding: a count is never changed"),
    refuse("batch_finding_never_deleted", "DELETE ON batch_finding", "batch_finding: a count is never deleted"),
    createTable("unit_key", unitKeyLines),
    refuse(
      "unit_key_one_key",
      "INSERT ON unit_key",
      "unit_key: a registry has one key",
      "EXISTS (SELECT 1 FROM unit_key WHERE key_id <> NEW.key_id)",
    ),
    refuse("unit_key_same_key", "UPDATE ON unit_key", "unit_key: the same key is sealed again, never another", "NEW.key_id <> OLD.key_id"),
    refuse("unit_key_never_deleted", "DELETE ON unit_key", "unit_key: the key is never deleted"),
    createTable("question", questionLines),
    refuse("question_never_changed", "UPDATE ON question", "question: a question is never changed"),
    createTable("cohort", cohortLines),
    createTable("settings", settingsLines()),
    ...versionTriggers("settings", ["content"]),
  ];
}
