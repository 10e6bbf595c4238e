import type { PlaceQuestion } from "../told/question";

/**
 * A question as the command line takes it, without the program's name; `more` are further options, those without a value are left out.
 * @example commandWords("measure gain", { where: {}, by: ["bone"], asOf: 3 }, { per: null }) // => "measure gain --by bone --as-of 3"
 */
export function commandWords(verb: string, { where, by, asOf }: PlaceQuestion, more: Readonly<Record<string, string | null>> = {}): string {
  const options: Readonly<Record<string, string | null>> = {
    by: by.length === 0 ? null : by.join(","),
    ...more,
    cohort: Object.keys(where).length === 0 ? null : quoted(JSON.stringify(where)),
    "as-of": asOf === null ? null : String(asOf),
  };
  const words = Object.entries(options).flatMap(([name, value]) =>
    value === null ? [] : [value === "" ? `--${name}` : `--${name} ${value}`],
  );
  return [verb, ...words].join(" ");
}

/** A word that a shell takes as it stands. */
function quoted(text: string): string {
  return `'${text.replaceAll("'", "'\\''")}'`;
}
