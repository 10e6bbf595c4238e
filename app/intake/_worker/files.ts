import { defaultLimits, type FileRead, type Finding, readFile, readSheet, type Sheet } from "@/lib/intake";
import type { Arrived, SheetArrived } from "../_talk/view";
import type { Session, Work } from "./session";

/** Reads files into the session. One of the name of an earlier file takes its place: it was mended. */
export async function readFiles(session: Session, files: readonly File[], { signal, pace }: Work): Promise<readonly Arrived[]> {
  const read = new Map<string, FileRead>();
  for (const [done, file] of files.entries()) {
    pace({ step: "arrive", done, of: files.length });
    read.set(file.name, await readOne(file, signal));
  }
  for (const [name, file] of read) session.files.set(name, file);
  session.prepared = null;
  return arrivedFiles(session);
}

async function readOne(file: File, signal: AbortSignal): Promise<FileRead> {
  // a file above the limit is refused by its size, before its bytes are brought in
  if (file.size > defaultLimits.bytes) return tooLarge(file);
  const bytes = new Uint8Array(await file.arrayBuffer());
  signal.throwIfAborted();
  return readFile(bytes, { file: file.name, signal });
}

export function forgetFile(session: Session, file: string): readonly Arrived[] {
  session.files.delete(file);
  session.prepared = null;
  return arrivedFiles(session);
}

function tooLarge({ name, size }: File): FileRead {
  const { findings } = readSheet(new Uint8Array(1), { file: name, limits: { ...defaultLimits, bytes: 0 } });
  const found = `${Math.ceil(size / 1024 / 1024)} MB`;
  return { sheets: [], findings: findings.map((finding) => ({ ...finding, found })), skipped: [] };
}

function arrivedFiles({ files }: Session): readonly Arrived[] {
  return [...files].map(([file, { sheets, findings, skipped }]) => ({
    file,
    findings,
    skipped,
    sheets: sheets.map((sheet) => sheetArrived(sheet, findings)),
  }));
}

function sheetArrived(sheet: Sheet, findings: readonly Finding[]): SheetArrived {
  const { file: name, encoding, delimiter, headers, rows, ragged } = sheet;
  const own = findings.filter(({ file }) => file === name);
  return { name, encoding, delimiter, columns: headers.length, rows: rows.length, ragged: ragged.length, headerRow: headerRowOf(own) };
}

/** Titles stand above the headers: the last of them says where. */
function headerRowOf(findings: readonly Finding[]): number {
  const titles = findings.flatMap(({ code, row }) => (code === "title-row-skipped" && row !== null ? [row] : []));
  return titles.length === 0 ? 1 : Math.max(...titles) + 1;
}
