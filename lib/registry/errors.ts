import type { TableName } from "@/lib/codebook";
import type { Finding } from "@/lib/intake";

/** A finding about a row that was brought: its table, and its place among the rows of that table, from 0; `null` where unknown. */
export type RowFinding = Finding & { readonly table: TableName | null; readonly place: number | null };

/** Rows that the registry doesn't take. Nothing of their batch was committed; no cell is quoted. */
export class RowsRefused extends Error {
  override readonly name = "RowsRefused";
  readonly findings: readonly RowFinding[];

  constructor(findings: readonly RowFinding[]) {
    super(`commit requires rows without errors, received ${summaryOf(findings)}`);
    this.findings = findings;
  }
}

function summaryOf(findings: readonly RowFinding[]): string {
  const counts = new Map<string, number>();
  for (const { code } of findings) counts.set(code, (counts.get(code) ?? 0) + 1);
  const first = findings[0];
  const where = first
    ? `; the first: ${[first.table, first.field].filter(Boolean).join(" ") || "row"}, found ${first.found}, expected ${first.expected}`
    : "";
  return `${[...counts].map(([code, n]) => `${n} ${code}`).join(", ")}${where}`;
}

/** A key that isn't the registry's: cases named by it would join none of those held. */
export class UnitKeyRefused extends Error {
  override readonly name = "UnitKeyRefused";

  constructor() {
    super("the registry requires its own key, sealed again or not, received another key");
  }
}

/** A commit was told to stop when it had been written already. */
export class StopTooLate extends Error {
  override readonly name = "StopTooLate";

  constructor(readonly batch: number) {
    super(`the stop came too late: batch ${batch} was committed`);
  }
}

/** The disk, the file or another process stood in the way. Nothing was committed. */
export class NothingCommitted extends Error {
  override readonly name = "NothingCommitted";
}
