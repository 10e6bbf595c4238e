import { type CaseCorrectionAsked, correctCase, TypedWrongly } from "@/lib/answers";
import { type CorrectionReason, correctionReasons, tableNames } from "@/lib/codebook";
import { RowsRefused } from "@/lib/registry";
import { oneOf, parseWords, Refusal, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { now } from "../now";
import { withRegistry } from "../registry-folder";

const options = { reason: { type: "string" }, clear: { type: "boolean" } } as const;
const usual: CorrectionReason = "typing-error";

export const correct: Command = {
  words: `correct CASE TABLE ROW FIELD VALUE|--clear [--reason ${correctionReasons.join("|")}]`,
  about:
    "correct one field by hand until the sheet’s own value changes; days from surgery; rows by number, as `casebook CASE --json` gives them",
  run: async (args) => {
    const asked = askedIn(args);
    const { batch, contentHash } = await withRegistry((registry) => correctCase(registry, { ...asked, at: now() }).catch(refused));
    return done({ batch, contentHash }, batch === null ? "It says so already." : `Corrected as batch ${batch}. Content ${contentHash}.`);
  },
};

/** @throws UsageError */
function askedIn(args: readonly string[]): Omit<CaseCorrectionAsked, "at"> {
  const { values, words } = parseWords(args, options);
  const clears = values.clear === true;
  if (words.length !== (clears ? 4 : 5))
    throw new UsageError("correct requires a case, a table, a row, a field and a value, or --clear in its place");
  const [number = "", name, row = "", field = "", typed = ""] = words;
  if (![number, row].every((word) => /^\d{1,9}$/.test(word))) throw new UsageError("correct requires the numbers of a case and of a row");
  const table = tableNames.find((one) => one === name);
  if (!table) throw new UsageError(`correct requires a table among ${tableNames.join(", ")}`);
  const reason = oneOf(values, "reason", correctionReasons) ?? (clears ? "clearing" : usual);
  return { case: Number(number), table, entity: Number(row), field, typed: clears ? "" : typed, reason };
}

function refused(error: unknown): never {
  if (error instanceof TypedWrongly) throw new UsageError(error.message);
  if (error instanceof RangeError) throw new UsageError(error.message);
  if (error instanceof RowsRefused) throw new Refusal(error.message, { findings: error.findings });
  throw error;
}
