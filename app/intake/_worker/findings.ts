import type { Severity } from "@/lib/codebook";
import type { Finding, Prepared } from "@/lib/intake";
import type { GroupShown } from "../_talk/view";
import type { Session } from "./session";

const weights: Readonly<Record<Severity, number>> = { error: 0, ask: 1, warn: 2, note: 3 };

/** Findings of reading and of preparing. */
export function allFindings({ files }: Session, { findings }: Prepared): readonly Finding[] {
  return [...findingsOfReading({ files }), ...findings];
}

function findingsOfReading({ files }: Pick<Session, "files">): readonly Finding[] {
  return [...files.values()].flatMap(({ findings }) => findings);
}

export function keyOfGroup({ code, file, column }: Pick<Finding, "code" | "file" | "column">): string {
  return `${code}\u001f${file}\u001f${column}`;
}

/** Groups by what they cost: those of reading stand before those of rows of the same weight. */
export function groupsShown(session: Session, prepared: Prepared): readonly GroupShown[] {
  const firstRows = firstRowsOf(allFindings(session, prepared));
  return [...groupsOf(findingsOfReading(session)), ...prepared.groups]
    .map((group) => ({ ...group, key: keyOfGroup(group), firstRows: firstRows.get(keyOfGroup(group)) ?? [] }))
    .sort((a, b) => weights[a.severity] - weights[b.severity]);
}

const mostRows = 3;

function firstRowsOf(findings: readonly Finding[]): ReadonlyMap<string, readonly number[]> {
  const rows = new Map<string, number[]>();
  for (const finding of findings) {
    const key = keyOfGroup(finding);
    const known = rows.get(key) ?? [];
    rows.set(key, known);
    if (finding.row !== null && known.length < mostRows && !known.includes(finding.row)) known.push(finding.row);
  }
  return rows;
}

function groupsOf(findings: readonly Finding[]): Prepared["groups"] {
  const groups = new Map<string, Prepared["groups"][number]>();
  for (const finding of findings) {
    const { code, severity, file, column } = finding;
    const key = keyOfGroup(finding);
    // a row with too few or too many cells is aside for that alone
    const bringsBack = (groups.get(key)?.bringsBack ?? 0) + (code === "ragged-row" ? 1 : 0);
    groups.set(key, { code, severity, file, column, rows: (groups.get(key)?.rows ?? 0) + 1, bringsBack });
  }
  return [...groups.values()];
}

export function findingsOfGroup(session: Session, prepared: Prepared, group: string): readonly Finding[] {
  return allFindings(session, prepared).filter((finding) => keyOfGroup(finding) === group);
}

export function countsBySeverity(findings: readonly Finding[]): Readonly<Record<Severity, number>> {
  const counts: Record<Severity, number> = { error: 0, ask: 0, warn: 0, note: 0 };
  for (const { severity } of findings) counts[severity]++;
  return counts;
}
