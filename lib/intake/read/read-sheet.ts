import { finding } from "../findings/finding";

import { decode } from "./decode";
import { defaultLimits, type Limits } from "./limits";
import { kindByFirstBytes, kindByText } from "./not-a-table";
import { parseRecords } from "./records";
import { takeSepLine } from "./sep-line";
import { type SheetRead, sheetOf } from "./sheet-of";
import { sniffDelimiter } from "./sniff-delimiter";

/**
 * A delimited text file as headers and rows of strings. Encoding, delimiter and header row are found; a file that is no table, or more than
 * the limits allow, is refused whole with the reason (`sheet: null`). Never throws for what a file holds.
 */
export function readSheet(bytes: Uint8Array, { file, limits = defaultLimits }: { file: string; limits?: Limits }): SheetRead {
  const refuse = (code: Parameters<typeof finding>[0], found: string, row: number | null = null): SheetRead => ({
    sheet: null,
    findings: [finding(code, { file, row }, found)],
  });
  if (bytes.length === 0) return refuse("empty-file", "0 bytes");
  if (bytes.length > limits.bytes) return refuse("too-large", `${Math.ceil(bytes.length / 1024 / 1024)} MB`);
  const magic = kindByFirstBytes(bytes);
  if (magic) return refuse("not-a-table", magic);
  const decoded = decode(bytes);
  if (!decoded) return refuse("unreadable-encoding", "bytes that are no text in the encoding that the file’s first bytes name");
  const strange = kindByText(decoded.text);
  if (strange) return refuse("not-a-table", strange);
  if (decoded.text.trim() === "") return refuse("empty-file", "blanks only");

  const sep = takeSepLine(decoded.text);
  const delimiter = sep.delimiter ?? sniffDelimiter(sep.rest) ?? ",";
  const { records, unclosedQuoteAt } = parseRecords(sep.rest, delimiter, 1 + sep.lines);
  if (unclosedQuoteAt !== null) return refuse("unclosed-quote", "a quotation mark without its partner", unclosedQuoteAt);
  const guessed = decoded.guessed ? [finding("encoding-guessed", { file }, decoded.encoding)] : [];
  return sheetOf(records, { file, encoding: decoded.encoding, delimiter, said: guessed, limits });
}
