import type { FindingCode } from "@/lib/codebook";
import {
  type Finding,
  type KeyRing,
  type LengthUnit,
  type Mapping,
  type Prepared,
  prepare,
  type RefusedFile,
  refusedFiles,
  type StrippedRows,
} from "@/lib/intake";
import type { Registry } from "@/lib/registry";
import type { ReadFiles } from "./files";
import type { HeldBeside } from "./held";
import { type PlainFile, plainFiles, withPlainNames } from "./plain-names";

export type PreparedFiles = Pick<
  Prepared,
  "rows" | "questions" | "mapping" | "mappings" | "counts" | "groups" | "news" | "dropped" | "comments"
> & {
  readonly findings: readonly Finding[];
  readonly findingCounts: { readonly [C in FindingCode]?: number };
  readonly rowsRefused: number;
  readonly rowsHeld: number;
  readonly refusedFiles: readonly RefusedFile[];
  readonly plainFile: PlainFile;
};

/** The files of the call through match, strip and check. */
export async function prepareFiles(call: {
  readonly registry: Registry;
  readonly read: ReadFiles;
  readonly mapping: Mapping;
  /** Saved mappings that fit, by sheet. */
  readonly mappings: Readonly<Record<string, Mapping>>;
  readonly lengths: LengthUnit | null;
  readonly ring: KeyRing;
  readonly unit: string | undefined;
  readonly held: StrippedRows;
  readonly beside: HeldBeside;
}): Promise<PreparedFiles> {
  const settings = await call.registry.settings();
  const [year, month, day] = new Date().toISOString().slice(0, 10).split("-").map(Number) as [number, number, number];
  const prepared = await prepare({
    sheets: call.read.sheets,
    mapping: call.mapping,
    mappings: call.mappings,
    ring: call.ring,
    unit: call.unit ?? settings.units[0] ?? "unit-1",
    today: { year, month, day },
    auditYearStartsIn: settings.auditYearStartsIn,
    yearOnly: settings.yearOnly,
    units: settings.units,
    scores: settings.scores.map(({ code }) => code),
    lengths: call.lengths,
    held: call.held,
    ...call.beside,
  });
  const plainFile = plainFiles(prepared);
  const told = withPlainNames(prepared, plainFile);
  const findings = [...call.read.findings, ...told.findings];
  return {
    ...prepared,
    ...told,
    findings,
    findingCounts: countsOf(findings),
    rowsRefused: prepared.counts.rowsRefused,
    rowsHeld: Object.values(prepared.rows).reduce((sum, rows) => sum + rows.length, 0),
    refusedFiles: refusedFiles(prepared).map((refused) => ({ ...refused, file: plainFile(refused.file) })),
    plainFile,
  };
}

function countsOf(findings: readonly Finding[]): { [C in FindingCode]?: number } {
  const counts: { [C in FindingCode]?: number } = {};
  for (const { code } of findings) counts[code] = (counts[code] ?? 0) + 1;
  return counts;
}
