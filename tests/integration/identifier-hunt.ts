import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { gunzipSync, inflateSync } from "node:zlib";
import { leastInBytes, numbersInCells } from "./hunt/cells";
import { encodingsOf, numericEncodingsOf } from "./hunt/encodings";
import { makeFinder, type Needle } from "./hunt/search";
import { type PlantedDate, type Spelling, spellingsOfDate, spellingsOfName, spellingsOfNumber } from "./hunt/spellings";

/** Identifiers that a test put into a file, and that must be nowhere afterwards. */
export type Planted = {
  readonly names?: readonly string[];
  readonly numbers?: readonly string[];
  readonly dates?: readonly PlantedDate[];
};

/** Where an identifier was found, how it was written there, and at which byte. */
export type Trace = { readonly place: string; readonly of: string; readonly form: string; readonly at: number };

/** A request as caught: body as bytes or text. */
export type CaughtRequest = {
  readonly url: string;
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: Buffer | string | null;
};

export type Hunt = {
  readonly needles: number;
  inBytes(place: string, bytes: Buffer): readonly Trace[];
  inText(place: string, text: string): readonly Trace[];
  /** Every file under a folder: database, `-wal`, `-shm`, logs, whatever lies there. Names of files too. */
  inFolder(folder: string): readonly Trace[];
  inRequests(requests: readonly CaughtRequest[]): readonly Trace[];
};

/** Shorter ones stand by chance in a database: of three letters, one in 500 pseudonyms of 26 characters holds nearly every one. */
const leastCharacters = 4;
/** Shorter numbers of digits alone are equal to a length, a year or a day of someone. */
const leastDigits = 6;
/** Shorter words count only where they stand alone. */
const leastInsideWords = 6;

/**
 * A hunt for planted identifiers in all their forms.
 * @throws RangeError for a name or number too short to tell from chance: plant longer ones
 */
export function makeHunt({ names = [], numbers = [], dates = [] }: Planted): Hunt {
  [...names, ...numbers].forEach(requireLongEnough);
  const needles = uniqueNeedles([
    ...names.flatMap((name) => needlesOf(name, spellingsOfName(name))),
    ...numbers.flatMap((number) => [...needlesOf(number, spellingsOfNumber(number)), ...numericNeedlesOf(number)]),
    ...dates.flatMap((date) => needlesOf([date.year, date.month, date.day].join("-"), spellingsOfDate(date))),
  ]);
  if (needles.length === 0) throw new RangeError("makeHunt requires something planted, received nothing");
  const find = makeFinder(needles);
  const inBytes = (place: string, bytes: Buffer): readonly Trace[] => {
    const traces: Trace[] = [];
    for (const [where, plain] of unpacked(place, bytes))
      find(plain, ({ of, form, encoding }, at) => traces.push({ place: where, of, form: `${form}, ${encoding}`, at }));
    return traces;
  };
  const inText = (place: string, text: string) => inBytes(place, Buffer.from(text, "utf8"));
  return {
    needles: needles.length,
    inBytes,
    inText,
    inFolder: (folder) =>
      filesUnder(folder).flatMap((file) => {
        const bytes = readFileSync(file);
        return [...inText(`name of ${file}`, file.slice(folder.length)), ...inBytes(file, bytes), ...inCells(file, bytes, numbers)];
      }),
    inRequests: (requests) => requests.flatMap((request, n) => inRequest(`request ${n + 1}`, request, inBytes)),
  };
}

/** Of a database also the cells, for numbers too small to be told from chance in its bytes. */
function inCells(file: string, bytes: Buffer, planted: readonly string[]): readonly Trace[] {
  if (!bytes.subarray(0, 15).equals(Buffer.from("SQLite format 3"))) return [];
  const small = planted.map((text) => [Number(text.replace(/[ ./-]/g, "")), text] as const).filter(([value]) => value < leastInBytes);
  return numbersInCells(file, new Map(small)).map(({ table, of, at }) => ({
    place: file,
    of,
    form: `as a number, in a cell of ${table}`,
    at,
  }));
}

function requireLongEnough(text: string): void {
  const least = /^[\d\s.-]+$/.test(text) ? leastDigits : leastCharacters;
  const length = text.replace(/[^\p{L}\p{N}]/gu, "").length;
  if (length < least)
    throw new RangeError(
      `makeHunt requires names of ${leastCharacters} characters and numbers of ${leastDigits} digits, received ${length}`,
    );
}

function needlesOf(of: string, spellings: readonly Spelling[]): readonly Needle[] {
  const unique = [...new Map(spellings.toReversed().map((spelling) => [spelling.text, spelling])).values()].toReversed();
  return unique.flatMap(({ form, text }) =>
    encodingsOf(text)
      .filter(({ bytes }) => bytes.length >= 4)
      .map((encoded) => ({ ...encoded, of, form, isolated: isolationOf(text) })),
  );
}

function numericNeedlesOf(of: string): readonly Needle[] {
  return numericEncodingsOf(of).map((encoded) => ({ ...encoded, of, form: "as a number", isolated: null }));
}

function isolationOf(text: string): Needle["isolated"] {
  if (/^\d.*\d$/.test(text)) return "digits";
  return text.length < leastInsideWords ? "letters" : null;
}

// of equal bytes the first spelling and encoding is kept: they are listed from the plainest on
function uniqueNeedles(needles: readonly Needle[]): readonly Needle[] {
  const unique = new Map<string, Needle>();
  for (const needle of needles) {
    const key = `${needle.bytes.toString("latin1")} ${needle.unit}`;
    if (!unique.has(key)) unique.set(key, needle);
  }
  return [...unique.values()];
}

/** The bytes, and what they hold when they are packed. */
function unpacked(place: string, bytes: Buffer): readonly (readonly [string, Buffer])[] {
  const plain = [place, bytes] as const;
  try {
    if (bytes[0] === 0x1f && bytes[1] === 0x8b) return [plain, [`${place}, unpacked`, gunzipSync(bytes)]];
    if (bytes[0] === 0x78 && bytes.readUInt16BE(0) % 31 === 0) return [plain, [`${place}, unpacked`, inflateSync(bytes)]];
  } catch {
    // not packed after all: only its first bytes looked so
  }
  return [plain];
}

function filesUnder(folder: string): readonly string[] {
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .map((name) => join(folder, name))
    .filter((file) => statSync(file).isFile());
}

function inRequest(place: string, { url, method = "", headers = {}, body }: CaughtRequest, inBytes: Hunt["inBytes"]): readonly Trace[] {
  const head = `${method} ${url}\n${Object.entries(headers)
    .map(([name, value]) => `${name}: ${value}`)
    .join("\n")}`;
  const bytes = typeof body === "string" ? Buffer.from(body, "utf8") : body;
  return [...inBytes(`${place}, head`, Buffer.from(head, "utf8")), ...(bytes ? inBytes(`${place}, body`, bytes) : [])];
}
