/** A day of the calendar. */
export type PlantedDate = { readonly year: number; readonly month: number; readonly day: number };

/** How an identifier may be written: the form's name and the text. */
export type Spelling = { readonly form: string; readonly text: string };

const months = "January February March April May June July August September October November December".split(" ");
const two = (n: number) => String(n).padStart(2, "0");

/** A name as typed, without accents, its words joined or turned round; each as typed, in capitals and small. */
export function spellingsOfName(name: string): readonly Spelling[] {
  const words = name.split(/[\s,]+/).filter((word) => word !== "");
  const arranged: [string, string][] = [
    ["as typed", name],
    ["without accents", name.normalize("NFKD").replace(/\p{M}/gu, "")],
    ["decomposed", name.normalize("NFD")],
    ["words joined", words.join("")],
    ["words turned round", words.toReversed().join(" ")],
    ["words turned round, with a comma", words.toReversed().join(", ")],
    ["words in order", words.join(" ")],
    ["words joined by underscores", words.join("_")],
  ];
  return arranged.flatMap(([form, text]) => [
    { form, text },
    { form: `${form}, capitals`, text: text.toUpperCase() },
    { form: `${form}, small`, text: text.toLowerCase() },
  ]);
}

/** A number as typed, and without its separators, spaced, hyphened, as capitals and small. */
export function spellingsOfNumber(number: string): readonly Spelling[] {
  const bare = number.replace(/[^\p{L}\p{N}]/gu, "");
  const groups = /^(\d{3})(\d{3})(\d{4})$/.exec(bare)?.slice(1) ?? [];
  const texts: [string, string][] = [
    ["as typed", number],
    ["capitals", number.toUpperCase()],
    ["small", number.toLowerCase()],
    ["bare", bare],
    ["bare capitals", bare.toUpperCase()],
    ...(groups.length > 0
      ? ([
          ["3-3-4 with blanks", groups.join(" ")],
          ["3-3-4 with hyphens", groups.join("-")],
        ] as [string, string][])
      : []),
  ];
  return texts.map(([form, text]) => ({ form, text }));
}

/**
 * A date in every common writing. Its number of days is not among them: a day on a person's own line is a number of the same size, and
 * with hundreds of them some are equal by chance.
 */
export function spellingsOfDate({ year, month, day }: PlantedDate): readonly Spelling[] {
  const [yyyy, yy, mm, dd, m, d] = [String(year), two(year % 100), two(month), two(day), String(month), String(day)];
  const name = months[month - 1] ?? "";
  const short = name.slice(0, 3);
  const seconds = Date.UTC(year, month - 1, day) / 1000;
  const orders = [".", "/", "-"].flatMap((mark): [string, string][] =>
    [yyyy, yy].flatMap((y): [string, string][] => [
      [`day first, ${mark}`, [dd, mm, y].join(mark)],
      [`day first, no zeros, ${mark}`, [d, m, y].join(mark)],
      [`month first, ${mark}`, [mm, dd, y].join(mark)],
      [`month first, no zeros, ${mark}`, [m, d, y].join(mark)],
      [`year first, ${mark}`, [y, mm, dd].join(mark)],
    ]),
  );
  const texts: [string, string][] = [
    ...orders,
    ["compact, year first", yyyy + mm + dd],
    ["compact, day first", dd + mm + yyyy],
    ["compact, two-digit year first", yy + mm + dd],
    ["compact, day first, two-digit year", dd + mm + yy],
    ["in words", `${d} ${name} ${yyyy}`],
    ["in short words", `${d} ${short} ${yyyy}`],
    ["in short words with hyphens", `${dd}-${short}-${yyyy}`],
    ["month in words first", `${name} ${d}, ${yyyy}`],
    ["as JSON fields", `"year":${year},"month":${month},"day":${day}`],
    ["seconds since 1970", String(seconds)],
    ["milliseconds since 1970", String(seconds * 1000)],
  ];
  return texts.map(([form, text]) => ({ form, text }));
}
