import { writeFileSync } from "node:fs";
import { oneOf, parseWords, Refusal, textOf, UsageError } from "../arguments";
import { type Answer, type Command, done } from "../command";
import { answerOf, textOfIntake } from "../intake/answer";
import { mappingFor, readFiles, saveMapping } from "../intake/files";
import { heldRows } from "../intake/held";
import { openKeyFor } from "../intake/key";
import { prepareFiles } from "../intake/prepare-files";
import { now } from "../now";
import { withRegistry } from "../registry-folder";

const options = {
  mapping: { type: "string" },
  "save-mapping": { type: "string" },
  dates: { type: "string" },
  lengths: { type: "string" },
  decimal: { type: "string" },
  "passphrase-file": { type: "string" },
  "check-only": { type: "boolean" },
  refused: { type: "string" },
  unit: { type: "string" },
} as const;

export const intake: Command = {
  words:
    "intake FILE… [--mapping F] [--save-mapping F] [--dates dmy|mdy|ymd] [--lengths mm|cm] [--decimal ,|.] [--passphrase-file F] [--check-only] [--refused F]",
  about: "strip, check and commit a unit's sheets, as one batch",
  async run(args) {
    const { values, words: files } = parseWords(args, options);
    if (files.length === 0) throw new UsageError("intake requires at least one file");
    const dates = oneOf(values, "dates", ["dmy", "mdy", "ymd"]) ?? null;
    const decimal = oneOf(values, "decimal", [",", "."]) ?? null;
    const lengths = oneOf(values, "lengths", ["mm", "cm"]) ?? null;
    const mapping = mappingFor(textOf(values, "mapping"), { dates, decimal });
    const read = await readFiles(files);
    for (const sheet of read.skipped) process.stderr.write(`passed over: ${sheet} (hidden, blank or no table of cases)\n`);
    const checkOnly = values["check-only"] === true;
    return withRegistry(async (registry) => {
      const key = await openKeyFor(registry, textOf(values, "passphrase-file"), { checkOnly });
      const prepared = await prepareFiles({
        registry,
        read,
        mapping,
        lengths,
        ring: key.ring,
        unit: textOf(values, "unit"),
        held: await heldRows(registry),
      });
      if (textOf(values, "save-mapping")) saveMapping(textOf(values, "save-mapping") as string, prepared.mapping);
      if (textOf(values, "refused")) writeFileSync(textOf(values, "refused") as string, prepared.refusedCsv, { mode: 0o600 });
      if (prepared.questions.length > 0 || prepared.rowsHeld === 0) throw refusal(prepared);
      if (checkOnly) return answered(prepared, null);
      const committed = await registry.commit(prepared.rows, {
        at: now(),
        findings: prepared.findingCounts,
        ...(key.record ? { unitKey: key.record } : {}),
      });
      // only a key that was kept is worth a code: a commit that failed throws before this
      if (key.recoveryCode && committed.batch !== null) process.stderr.write(key.recoveryCode);
      return answered(prepared, committed);
    });
  },
};

type Prepared = Awaited<ReturnType<typeof prepareFiles>>;

function answered(prepared: Prepared, committed: Parameters<typeof answerOf>[1]): Answer {
  const answer = answerOf(prepared, committed);
  return done(answer, textOfIntake(answer, prepared));
}

function refusal(prepared: Prepared): Refusal {
  const answer = answerOf(prepared, null);
  return new Refusal(`${textOfIntake(answer, prepared)}\nNothing was committed.`, answer);
}
