import type { Severity } from "@/lib/codebook";
import type { Finding } from "../types";
import type { FindingGroup } from "./prepared";

const weights: Readonly<Record<Severity, number>> = { error: 0, ask: 1, warn: 2, note: 3 };

/** Findings by kind and column, those that cost most first: what a mend would bring back, then how many rows it touches. */
export function groupFindings(findings: readonly Finding[]): readonly FindingGroup[] {
  const groups = new Map<string, { group: FindingGroup; rows: Set<number | null> }>();
  for (const finding of findings) {
    const { code, severity, file, column } = finding;
    const key = groupOf(finding);
    const held = groups.get(key) ?? { group: { code, severity, file, column, rows: 0, bringsBack: 0 }, rows: new Set() };
    groups.set(key, held);
    held.rows.add(finding.row);
  }
  const alone = keptAsideByOne(findings);
  return [...groups]
    .map(([key, { group, rows }]) => ({ ...group, rows: rows.size, bringsBack: alone.get(key) ?? 0 }))
    .sort(
      (a, b) => weights[a.severity] - weights[b.severity] || b.bringsBack - a.bringsBack || b.rows - a.rows || a.code.localeCompare(b.code),
    );
}

/** Rows that one kind of finding alone keeps aside, by that kind. */
function keptAsideByOne(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const reasons = new Map<string, Set<string>>();
  for (const finding of findings) {
    if (finding.severity !== "error" || finding.row === null) continue;
    const row = `${finding.row}\u001f${finding.file}`;
    const held = reasons.get(row) ?? new Set();
    reasons.set(row, held.add(groupOf(finding)));
  }
  const alone = new Map<string, number>();
  for (const groups of reasons.values()) {
    const [only] = groups;
    // deleting one of two equal rows brings nothing back
    if (groups.size === 1 && only !== undefined && !only.startsWith("duplicate-row")) alone.set(only, (alone.get(only) ?? 0) + 1);
  }
  return alone;
}

/** Findings in the order of their groups, then of the file's rows. */
export function orderFindings(findings: readonly Finding[], groups: readonly FindingGroup[]): readonly Finding[] {
  const ranks = new Map(groups.map((group, rank) => [groupOf(group), rank]));
  const rank = (finding: Finding) => ranks.get(groupOf(finding)) ?? groups.length;
  return [...findings].sort((a, b) => rank(a) - rank(b) || (a.row ?? 0) - (b.row ?? 0));
}

function groupOf({ code, file, column }: Pick<Finding, "code" | "file" | "column">): string {
  return `${code}\u001f${file}\u001f${column}`;
}
