import { defaultLimits, type Finding, readFile, readSheet, type SheetRead } from "@/lib/intake";
import type { Arrived } from "../_talk/view";
import type { Session, Work } from "./session";

/** Reads files into the session. One of the name of an earlier file takes its place: it was mended. */
export async function readFiles(session: Session, files: readonly File[], { signal, pace }: Work): Promise<readonly Arrived[]> {
  for (const [done, file] of files.entries()) {
    pace({ step: "arrive", done, of: files.length });
    // a file above the limit is refused by its size, before its bytes are brought in
    const bytes = file.size > defaultLimits.bytes ? new Uint8Array(0) : new Uint8Array(await file.arrayBuffer());
    signal.throwIfAborted();
    const read = file.size > defaultLimits.bytes ? { [file.name]: tooLarge(file) } : await sheetsOf(bytes, file.name, signal);
    for (const name of session.files.keys()) if (name === file.name || name.startsWith(`${file.name} · `)) session.files.delete(name);
    for (const [name, sheet] of Object.entries(read)) session.files.set(name, { bytes: file.size, read: sheet });
  }
  session.prepared = null;
  return arrivedFiles(session);
}

/** A file of text by its name; the sheets of a workbook each by its own. */
async function sheetsOf(bytes: Uint8Array, file: string, signal: AbortSignal): Promise<Readonly<Record<string, SheetRead>>> {
  const { sheets, findings } = await readFile(bytes, { file, signal });
  if (sheets.length === 0) return { [file]: { sheet: null, findings } };
  return Object.fromEntries(sheets.map((sheet) => [sheet.file, { sheet, findings: findings.filter((each) => each.file === sheet.file) }]));
}

export function forgetFile(session: Session, file: string): readonly Arrived[] {
  session.files.delete(file);
  session.prepared = null;
  return arrivedFiles(session);
}

function tooLarge(file: File): SheetRead {
  const limits = { ...defaultLimits, bytes: 0 };
  const { findings } = readSheet(new Uint8Array(1), { file: file.name, limits });
  const found = `${Math.ceil(file.size / 1024 / 1024)} MB`;
  return { sheet: null, findings: findings.map((finding) => ({ ...finding, found })) };
}

function arrivedFiles({ files }: Session): readonly Arrived[] {
  return [...files].map(([file, { bytes, read }]) => ({ file, bytes, findings: read.findings, sheet: shapeOf(read) }));
}

function shapeOf({ sheet, findings }: SheetRead): Arrived["sheet"] {
  if (!sheet) return null;
  const { encoding, delimiter, headers, rows, ragged } = sheet;
  return { encoding, delimiter, columns: headers.length, rows: rows.length, ragged: ragged.length, headerRow: headerRowOf(findings) };
}

/** Titles stand above the headers: the last of them says where. */
function headerRowOf(findings: readonly Finding[]): number {
  const titles = findings.flatMap(({ code, row }) => (code === "title-row-skipped" && row !== null ? [row] : []));
  return titles.length === 0 ? 1 : Math.max(...titles) + 1;
}
