import { byTable, type TableName, tableNames } from "@/lib/codebook";
import type { StrippedRows } from "../types";
import { decodeLine } from "./decode-line";
import type { Commit } from "./encode-commit";
import type { CommitHead } from "./head";
import { WireError } from "./wire-error";

/** Takes the lines of a commit one by one; `finish` gives it whole, or refuses one that broke off. */
export type CommitCollector = { take(line: string): void; finish(): Commit };

/** @throws WireError for a line that may not come in, a second head, rows after the end, counts that don't agree, or no end */
export function collectCommit(): CommitCollector {
  const rows = byTable((): object[] => []);
  let head: CommitHead | null = null;
  let ended = false;
  let lineNumber = 0;
  return {
    take(line) {
      lineNumber++;
      if (ended) throw new WireError(lineNumber, null, "a line after the end");
      const decoded = decodeLine(line, lineNumber);
      if (decoded.kind === "head") head = decoded.head;
      else if (decoded.kind === "row") rows[decoded.table].push(decoded.row);
      else {
        if (decoded.rows !== lineNumber - 2) throw new WireError(lineNumber, "end", "a count unlike the rows that came");
        ended = true;
      }
    },
    finish() {
      if (!head || !ended) throw new WireError(lineNumber, null, "a commit without its end");
      const { counts, findings, unitKey, overCorrections } = head;
      const differs = tableNames.some((table) => (counts[table] ?? 0) !== rows[table].length);
      if (differs) throw new WireError(1, "counts", "counts unlike the rows that came");
      // every row passed `decodeLine`
      return {
        rows: rows as Record<TableName, readonly object[]> as StrippedRows,
        findings,
        ...(unitKey ? { unitKey } : {}),
        ...(overCorrections ? { overCorrections } : {}),
      };
    },
  };
}
