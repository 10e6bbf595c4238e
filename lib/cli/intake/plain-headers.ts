import type { Prepared } from "@/lib/intake";

type Told = Pick<Prepared, "findings" | "groups" | "dropped">;

/** Headers that name a person are told by their place, `column 14`: what a command prints may end in a log. */
export function withPlainHeaders(prepared: Told & Pick<Prepared, "matches">): Told {
  const places = new Map(
    prepared.matches.flatMap(({ file, match }) =>
      match.columns
        .filter(({ dropped }) => dropped === "identifier-in-header")
        .map(({ header, index }) => [`${file}\u001f${header}`, `column ${index + 1}`] as const),
    ),
  );
  const plain = (file: string | null, header: string) => places.get(`${file}\u001f${header}`) ?? header;
  const told = <T extends { readonly file: string | null; readonly column: string | null }>(one: T): T =>
    one.column === null ? one : { ...one, column: plain(one.file, one.column) };
  return {
    findings: prepared.findings.map(told),
    groups: prepared.groups.map(told),
    dropped: prepared.dropped.map((one) => ({ ...one, header: plain(one.file, one.header) })),
  };
}
