import { detectInFileName, type Prepared } from "@/lib/intake";

type Told = Pick<Prepared, "findings" | "groups" | "dropped" | "comments" | "news">;
/** A file's name as it may be printed. */
export type PlainFile = (file: string) => string;

/** Files whose name holds a person's are told by their place, `file 2`. */
export function plainFiles({ findings, sheets }: Pick<Prepared, "findings" | "sheets">): PlainFile {
  const named = new Set(
    findings.flatMap(({ code, file, row, column }) => (code === "identifier-suspected" && row === null && column === null ? [file] : [])),
  );
  const places = new Map(sheets.map(({ file }, i) => [file, `file ${i + 1}`]));
  return (file) => (named.has(file) || detectInFileName(file).length > 0 ? (places.get(file) ?? "a sheet") : file);
}

/** Headers that name a person are told by their place, `column 14`, and files likewise: what a command prints may end in a log. */
export function withPlainNames(prepared: Told & Pick<Prepared, "matches">, plainFile: PlainFile): Told {
  const places = new Map(
    prepared.matches.flatMap(({ file, match }) =>
      match.columns
        .filter(({ dropped }) => dropped === "identifier-in-header")
        .map(({ header, index }) => [`${file}\u001f${header}`, `column ${index + 1}`] as const),
    ),
  );
  const plain = (file: string | null, header: string) => places.get(`${file}\u001f${header}`) ?? header;
  const inFile = <T extends { readonly file: string | null }>(one: T): T =>
    one.file === null ? one : { ...one, file: plainFile(one.file) };
  const told = <T extends { readonly file: string | null; readonly column: string | null }>(one: T): T =>
    inFile(one.column === null ? one : { ...one, column: plain(one.file, one.column) });
  const { news } = prepared;
  return {
    findings: prepared.findings.map(told),
    groups: prepared.groups.map(told),
    dropped: prepared.dropped.map((one) => inFile({ ...one, header: plain(one.file, one.header) })),
    comments: prepared.comments.map(inFile),
    news: news && { ...news, changes: news.changes.map(inFile) },
  };
}
