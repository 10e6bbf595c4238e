import { RegistryNotOpened } from "@/db/errors";
import { WireError } from "@/lib/intake";
import { NothingCommitted, type RowFinding, RowsRefused, UnitKeyRefused } from "../errors";

/** Why a commit failed, in a form that passes from one thread to another: the classes of errors don't. */
export type Failure =
  | { readonly why: "wire"; readonly line: number; readonly field: string | null; readonly kind: string }
  | { readonly why: "rows"; readonly findings: readonly RowFinding[] }
  | { readonly why: "key" }
  | { readonly why: "nothing-committed" | "range" | "type" | "other"; readonly message: string };

export function failureOf(error: unknown): Failure {
  if (error instanceof WireError) return { why: "wire", line: error.line, field: error.field, kind: error.kind };
  if (error instanceof RowsRefused) return { why: "rows", findings: error.findings };
  if (error instanceof UnitKeyRefused) return { why: "key" };
  const message = error instanceof Error ? error.message : "something that isn't an error was thrown";
  // the thread opens the file anew
  if (error instanceof NothingCommitted || error instanceof RegistryNotOpened) return { why: "nothing-committed", message };
  if (error instanceof RangeError) return { why: "range", message };
  return { why: error instanceof TypeError ? "type" : "other", message };
}

/** The error that a failure tells of, as it was thrown there. */
export function errorOf(failure: Failure): Error {
  switch (failure.why) {
    case "wire":
      return new WireError(failure.line, failure.field, failure.kind);
    case "rows":
      return new RowsRefused(failure.findings);
    case "key":
      return new UnitKeyRefused();
    case "nothing-committed":
      return new NothingCommitted(failure.message);
    case "range":
      return new RangeError(failure.message);
    case "type":
      return new TypeError(failure.message);
    case "other":
      return new Error(failure.message);
  }
}
