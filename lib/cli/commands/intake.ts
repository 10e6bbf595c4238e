import { emptyMapping } from "@/lib/intake";
import type { Registry } from "@/lib/registry";
import { oneOf, parseWords, Refusal, textOf, UsageError } from "../arguments";
import { type Answer, type Command, done } from "../command";
import { answerOf } from "../intake/answer";
import { type ReadFiles, readFiles, readMapping, withOptions } from "../intake/files";
import { heldBeside, heldRows } from "../intake/held";
import { openKeyFor } from "../intake/key";
import type { PlainFile } from "../intake/plain-names";
import { prepareFiles } from "../intake/prepare-files";
import { writeRefused } from "../intake/refused";
import { chooseMappings, keepMappings, savedMappings, saveMapping } from "../intake/saved-mappings";
import { textOfIntake } from "../intake/text";
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
  corrections: { type: "string" },
} as const;

export const intake: Command = {
  words:
    "intake FILE… [--mapping F] [--save-mapping F] [--dates dmy|mdy|ymd] [--lengths mm|cm] [--decimal ,|.] [--passphrase-file F] [--check-only] [--refused F] [--corrections keep|sheet] [--unit UNIT]",
  about: "strip, check and commit a unit’s sheets, as one batch",
  async run(args) {
    const { values, words: files } = parseWords(args, options);
    if (files.length === 0) throw new UsageError("intake requires at least one file");
    const call = callOf(values);
    const read = await readFiles(files);
    return withRegistry(async (registry) => {
      const key = await openKeyFor(registry, call.passphraseFile, call);
      const mappings = mappingsOf(registry, read, call);
      const prepared = await prepareFiles({
        registry,
        read,
        ...mappings,
        lengths: call.lengths,
        ring: key.ring,
        unit: call.unit,
        held: await heldRows(registry),
        beside: await heldBeside(registry),
      });
      sayTaken(read, mappings.chosen, prepared.plainFile);
      writeBeside(registry, prepared, call);
      if (prepared.questions.length > 0 || prepared.rowsHeld === 0) throw refusal(prepared);
      if (call.checkOnly) return answered(prepared, null, null);
      const committed = await registry.commit(prepared.rows, {
        at: now(),
        findings: prepared.findingCounts,
        overCorrections: call.corrections === "sheet" ? correctedIn(prepared) : 0,
        ...(key.record ? { unitKey: key.record } : {}),
      });
      // only a key that was kept is worth a code: a commit that failed throws before this
      if (key.recoveryCode && committed.batch !== null) process.stderr.write(key.recoveryCode);
      return answered(prepared, committed, await registry.waiting());
    });
  },
};

function callOf(values: ReturnType<typeof parseWords>["values"]) {
  const mapping = textOf(values, "mapping");
  return {
    dates: oneOf(values, "dates", ["dmy", "mdy", "ymd"]) ?? null,
    decimal: oneOf(values, "decimal", [",", "."]) ?? null,
    lengths: oneOf(values, "lengths", ["mm", "cm"]) ?? null,
    corrections: oneOf(values, "corrections", ["keep", "sheet"]) ?? "keep",
    mapping: mapping === undefined ? null : readMapping(mapping),
    saveMapping: textOf(values, "save-mapping"),
    refused: textOf(values, "refused"),
    passphraseFile: textOf(values, "passphrase-file"),
    unit: textOf(values, "unit"),
    checkOnly: values["check-only"] === true,
  } as const;
}
type Call = ReturnType<typeof callOf>;

/** The mapping that the call names, or the registry's own that fit the sheets; options of the call stand above either. */
function mappingsOf({ folder }: Registry, { sheets }: ReadFiles, call: Call) {
  const mapping = withOptions(call.mapping ?? emptyMapping, call);
  const chosen = call.mapping === null ? chooseMappings(sheets, savedMappings(folder)) : [];
  return { chosen, mapping, mappings: Object.fromEntries(chosen.map(({ file, saved }) => [file, withOptions(saved.mapping, call)])) };
}

/** Sheets passed over, and saved mappings taken: said once it is known whose names may be printed. */
function sayTaken({ skipped }: ReadFiles, chosen: ReturnType<typeof chooseMappings>, plainFile: PlainFile): void {
  for (const sheet of skipped) say(`passed over: ${plainFile(sheet)} (hidden, blank or no table of cases)`);
  for (const { file, saved } of chosen) say(`saved mapping ${saved.name} fits ${plainFile(file)}: taken (say --mapping to use another)`);
}

/** What the call asks to be written where the files are: the mapping as settled, and the rows set aside. */
function writeBeside({ folder }: Registry, prepared: Prepared, { saveMapping: to, refused }: Call): void {
  if (to !== undefined) {
    saveMapping(to, prepared.mapping);
    const kept = keepMappings(folder, Object.values(prepared.mappings));
    say(`mapping saved: ${to}, and for the next file of that shape as ${kept.join(", ")} in the registry’s folder`);
  }
  if (refused !== undefined) for (const line of writeRefused(refused, prepared.refusedFiles)) say(line);
}

function correctedIn({ news }: Prepared): number {
  return (news?.changes ?? []).filter(({ corrected }) => corrected !== null).length;
}

function say(line: string): void {
  process.stderr.write(`${line}\n`);
}

type Prepared = Awaited<ReturnType<typeof prepareFiles>>;

function answered(...[prepared, committed, waiting]: Parameters<typeof answerOf>): Answer {
  const answer = answerOf(prepared, committed, waiting);
  return done(answer, textOfIntake(answer, prepared));
}

function refusal(prepared: Prepared): Refusal {
  const answer = answerOf(prepared, null, null);
  return new Refusal(`${textOfIntake(answer, prepared)}\nNothing was committed.`, answer);
}
