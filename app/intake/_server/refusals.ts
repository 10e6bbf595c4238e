import type { WireError } from "@/lib/intake";
import type { NothingCommitted, RowsRefused, UnitKeyRefused } from "@/lib/registry";
import type { Refusal } from "../_talk/receipt";
import { BodyTooLarge } from "./body-too-large";

/** A refusal as JSON that a person can read. */
export function refused(status: number, error: string, message: string): Response {
  const refusal: Refusal = { error, message };
  return Response.json(refusal, { status });
}

/** What stood in the way of a commit, in words. No cell is quoted. @throws what nobody foresaw */
export function refusedBecause(error: unknown): Response {
  if (error instanceof BodyTooLarge)
    return refused(
      413,
      "too-large",
      "More than 256 MB of rows came at once. Nothing was kept. Bring the sheet in parts, by year for instance.",
    );
  if (isA<WireError>(error, "WireError")) {
    const where = error.field === null ? `line ${error.line}` : `line ${error.line}, ${error.field}`;
    return refused(422, "not-stripped", `The registry takes stripped rows only, and received ${error.kind} (${where}). Nothing was kept.`);
  }
  if (error instanceof TypeError) return refused(400, "broken-off", "The rows broke off on their way. Nothing was kept. Try once more.");
  if (isA<RowsRefused>(error, "RowsRefused")) return refused(422, "rows-refused", rowsText(error));
  if (isA<UnitKeyRefused>(error, "UnitKeyRefused"))
    return refused(
      409,
      "another-key",
      "The registry has a key of its own by now, made somewhere else. Nothing was kept. Reload this page and open that key with its passphrase.",
    );
  if (isA<NothingCommitted>(error, "NothingCommitted"))
    return refused(
      503,
      "not-written",
      "The registry’s file could not be written: the disk, or another program, stood in the way. Nothing was kept. Try once more.",
    );
  throw error;
}

// the registry was opened by whichever page came first, and pages are bundled apart: its errors are of that page's classes
function isA<E extends Error>(error: unknown, name: E["name"]): error is E {
  return error instanceof Error && error.name === name;
}

function rowsText({ findings }: RowsRefused): string {
  const [first] = findings;
  const what = first ? ` The first: ${first.field ?? "a row"}, found ${first.found}, expected ${first.expected}. ${first.mend}` : "";
  return `The registry looked at the rows once more and found ${findings.length} that it can’t take. Nothing was kept.${what}`;
}
