import { commands } from "@/lib/cli/commands";

/** What `--json` prints: an object's keys with what each holds, or a list whose entries have them. */
export type Shape = { readonly list?: true; readonly keys: Readonly<Record<string, string>> };

const counts = "rows by `persons`, `bodyMeasures`, `segments`, `visits`, `events`, `scores`";
const stamped = {
  batch: "as of which it was asked",
  state: "`{ batch, erasures }`",
  stamp: "result reference, for `result`",
  dataTo: "quarter of the last surgery held, or `null`",
};
const change = { batch: "number, or `null` when nothing changed", contentHash: "SHA-256 of all that is held, 64 hexadecimal digits" };

/** The commands with the shapes that scripts may rely on; a command has several where a word or option asks for another answer. */
export const shapes: Readonly<Record<string, Readonly<Record<string, Shape>>>> = {
  intake: {
    "": {
      keys: {
        batch: "number; `null` when nothing was new, and with `--check-only`",
        committed: counts,
        changed: "the same",
        unchanged: "the same",
        refused: "rows set aside",
        dropped: "headers that aren't kept; one that names a person is told as `column N`",
        findings: "`[{ code, severity, file, row, column, field, found, expected, mend }]`; `found` describes a cell and never quotes it",
        asks: "`[{ code, column, settledBy, choices, rows }]`: questions that the mapping or an option must settle; with any, exit 1",
        changes: "`[{ file, row, table, field, from, to, days }]` against what is held",
        absent: "rows held of the same tables that the files don't name; they stay held",
        absentSegments: "the segments among them, `[{ bone, side, surgeryYear, surgeryQuarter, ageAtSurgeryYears, device }]`",
        fresh: "rows new to the registry, committed or not",
        contentHash: change.contentHash,
        columns: "`[{ file, header, why, holds }]` of the columns that aren't kept",
        comments: "`[{ file, row, column }]`: none is coded here, so that their segments stand as events not collected",
        waiting: "rows held after this that wait for the row of their segment or person; `null` when nothing was committed",
      },
    },
  },
  undo: { "": { keys: { batch: "the new batch", undoes: "the batch taken back", contentHash: change.contentHash } } },
  batches: {
    "": {
      list: true,
      keys: {
        batch: "1, 2, 3 … without gaps, oldest first",
        kind: "intake, undo, correction, settings, join, part or erasure",
        at: "ISO time in UTC",
        counts,
        contentHash: change.contentHash,
        undoes: "the batch that an undo put back, or `null`",
      },
    },
  },
  casebook: {
    "": {
      keys: {
        batch: stamped.batch,
        dataTo: stamped.dataTo,
        where: "the cohort",
        segments: "in the list",
        cases: "in the list",
        held: "segments held in all",
        from: "first row shown, 0 the first",
        columns: "`[{ id, label, unit }]`",
        rows: "`[{ case, segment, … }]`, a value a column; days from that segment's surgery",
      },
    },
    CASE: {
      keys: {
        case: "its number",
        batch: stamped.batch,
        newestBatch: "number",
        dataTo: stamped.dataTo,
        line: "whether its days stand on a dated line",
        recorded: "fields of the person",
        segments: "each with its fields, course and visits",
        body: "body measures",
        scores: "by instrument",
        events: "those of the person and of each segment",
        corrections: "fields corrected by hand that stand",
        joined: "numbers read as this case",
        history: "batches that touched it, newest first",
      },
    },
  },
  completeness: {
    "": {
      keys: {
        batch: stamped.batch,
        years: "audit years, the latest first",
        segments: "of each year",
        items: "`[{ id, label, group, recorded: [n a year] }]`",
      },
    },
  },
  correct: { "": { keys: change } },
  join: { "": { keys: { ...change, case: "as which both are read", joined: "the case that became part of it" } } },
  part: { "": { keys: change } },
  template: {},
  measure: {
    ID: {
      keys: {
        measure: "id",
        definition: "in words",
        unit: "of its values",
        ...stamped,
        cohort: "the condition",
        method: "of estimate and interval",
        by: "fields of the split",
        groups: "each with `key`, `patients`, `segments`, `n` or healing counts, `excluded`, and its estimates with their intervals",
        notes: "`[{ code, text }]`",
      },
    },
    "--list": {
      list: true,
      keys: { id: "of the measure", title: "in words", unit: "of its values", of: "segment, person or events", definition: "in words" },
    },
  },
  compare: {
    "two groups": {
      keys: {
        measure: "id",
        unit: "of its values",
        definition: "in words",
        sides: "the two groups' names",
        groups: "as `measure` gives them",
        balance: "case mix, `[{ field, smd }]` and more",
        differences: "`[{ a, b, kind, estimate, se, df, lower, upper, p }]`, kind difference or ratio",
        splitsLookedAt: "how many splits of the cohort were asked",
        notes: "`[{ code, text }]`",
        ...stamped,
      },
    },
    "three groups or more": {
      keys: {
        sides: "the groups' names",
        groups: "as `measure` gives them",
        balance: "case mix, `[{ field, smd }]` and more: `smd` the largest between any two of the groups",
        differences: "each group against all others together, as those of two groups",
        p: "of the groups together, or `null`",
        testMethod: "in words, or `null`",
        ...stamped,
      },
    },
    "several outcomes": { keys: { members: "a comparison an outcome, crude and adjusted", tested: "how many were tested" } },
    "several outcomes of three groups or more": {
      keys: { members: "`[{ measure, answer, holm }]`, a comparison an outcome", tested: "how many were tested" },
    },
  },
  complications: {
    "": {
      keys: {
        measure: "`complications`",
        scheme: "of the classes",
        cohort: "the condition",
        by: "fields of the split",
        method: "of the intervals",
        groups: "`[{ key, label, segments, lookedFor, notLookedFor, rows }]`, `rows` a type or class each",
        notes: "`[{ code, text }]`",
        ...stamped,
      },
    },
  },
  outcome: {
    "": {
      keys: {
        title: "the question as a sentence",
        sentences: "the answer",
        cautions: "of the page",
        figures: "the numbers drawn",
        tables: "the numbers printed",
        definition: "in words",
        method: "in words",
        leftOut: "reasons with their counts",
        notes: "in words",
        references: "result references",
        commands: "lines that ask for the same records",
        batch: stamped.batch,
        dataTo: stamped.dataTo,
      },
    },
  },
  "follow-up": {
    "": {
      keys: {
        measure: "`follow-up`",
        by: "fields of the split",
        groups: "`[{ key, label, patients, segments, windows, completeness, median }]`",
        caution: "how far the calendar may be wrong",
        ...stamped,
      },
    },
  },
  cohort: {
    list: { list: true, keys: { name: "under which it was saved", where: "the condition" } },
    save: { keys: { name: "under which it was saved", where: "the condition" } },
    show: {
      keys: {
        where: "the condition",
        words: "the same in words",
        patients: "in it",
        segments: "in it",
        flow: "`[{ reason, segments }]` from all held to those in it",
      },
    },
  },
  result: {
    "": { keys: { stamp: "as asked", sameVersion: "whether this version made the first answer; its other keys are the answer's own" } },
  },
  settings: {
    "": {
      keys: {
        units: "codes",
        scores: "`[{ code, range, direction, minimalDifference }]`",
        difficultyScore: "code, or `null`",
        auditYearStartsIn: "month, 1 to 12",
        toleranceMm: "mm",
        yearOnly: "whether the quarter of surgery is left out",
      },
    },
  },
  stats: {
    "--list": { list: true, keys: { id: "METHOD", title: "in words", input: "a JSON Schema", example: "`{ input, output }`" } },
    METHOD: { keys: {} },
  },
};

/** What a word of `shapes` stands for where `--json` prints no object of documented keys. */
const otherwise: Readonly<Record<string, string>> = {
  template: "CSV on stdout, with `--json` as without.",
  stats: "`stats METHOD` prints the record of the method.",
};

/** The section of the docs on the command line: usage from the commands themselves, shapes from here. */
export function commandsSection(): string {
  return [
    "## Command line\n",
    "`npm run -s lengthbook -- COMMAND … [--json]`. With `--json` one object (or list) stands on stdout and nothing else; messages go to stderr. More keys may come; none goes.\n",
    "Exit: 0 done, also when some rows were set aside or nothing was new; 1 nothing was committed or the answer is refused, with `--json` as `{ refused }`, the findings, or (`undo`) `{ blockedBy: [batch] }`; 2 the call was wrong.\n",
    ...Object.entries(commands).map(([name, { words, about }]) => commandText(name, words, about)),
  ].join("\n");
}

function commandText(name: string, words: string, about: string): string {
  const text = Object.entries(shapes[name] ?? {}).flatMap(([when, { list, keys }]) => shapeLines(when, list === true, keys));
  const said = otherwise[name] ? [otherwise[name], ""] : [];
  return [`### \`${name}\`\n`, `${about}.\n`, `\`\`\`\n${words}\n\`\`\`\n`, ...text, ...said].join("\n");
}

function shapeLines(when: string, isList: boolean, keys: Shape["keys"]): readonly string[] {
  const entries = Object.entries(keys);
  if (entries.length === 0) return [];
  const head = `${isList ? "A list, each entry with" : "An object with"}${when === "" ? "" : `, for ${/^(--|[A-Z])/.test(when) ? `\`${when}\`` : when}`}:`;
  return [head, "", ...entries.map(([key, holds]) => `- \`${key}\`: ${holds}`), ""];
}
