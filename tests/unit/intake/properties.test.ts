import fc from "fast-check";
import { expect, test } from "vitest";
import { calendarDateOf, prepare, readSheet, type StrippedRows, writeCsv } from "@/lib/intake";
import { guardCell, unguardCell } from "@/lib/intake/csv/guard-cell";
import { readDate } from "@/lib/intake/values/date";
import { readNumber } from "@/lib/intake/values/number";
import { bytesOf, utf8, utf16 } from "./bytes";
import { load, ring, table, today } from "./load";

fc.configureGlobal({ seed: 20_261_125 });
const delimiters = [",", ";", "\t"] as const;
const written = fc
  .string({ unit: fc.oneof(fc.constantFrom(..."abcXYZ019 ,;\t\"'\n=+-@|é–ß"), fc.constantFrom("\r\n", "'=", '""')), maxLength: 12 })
  .map((text) => text.replaceAll("\r", "\r\n").replaceAll("\r\n\n", "\r\n"));
const cell = written.map((text) => text.trim());

test("a table written here is read as it was, whatever its cells, delimiter and encoding", () => {
  const rows = fc.array(fc.array(cell, { minLength: 3, maxLength: 3 }), { minLength: 3, maxLength: 12 });
  fc.assert(
    fc.property(rows, fc.constantFrom(...delimiters), fc.constantFrom("utf-8", "utf-16le", "utf-16be"), (cells, delimiter, encoding) => {
      const filled = cells.filter((row) => row.some((text) => text !== ""));
      fc.pre(filled.length > 0);
      const text = writeCsv([["local_id", "bone", "side"], ...filled], delimiter);
      const bytes = encoding === "utf-8" ? utf8(text) : utf16(text, encoding === "utf-16le" ? "le" : "be", true);
      expect(readSheet(bytes, { file: "x.csv" }).sheet?.rows).toEqual(filled);
    }),
    { numRuns: 300 },
  );
});

test("a guarded cell never begins as a formula does, and comes back as it was", () => {
  fc.assert(
    fc.property(written, (text) => {
      const safe = guardCell(text);
      expect(unguardCell(safe)).toBe(text);
      expect(/^[\s]*[=+\-@|]/.test(safe) && !/^-?\d+([.,]\d+)?$/.test(safe)).toBe(false);
    }),
  );
});

// OWASP, CSV injection: the first characters named there, behind blanks too, and their full-width forms
test.each(["=1+1", "+1", "-1+1", "@x", "\t=1", "\r=1", "\n=1", " =1", "=1+1\nnote", "＝1+1", '=1+2";=1+2', "=1+2'\" ;,=1+2"])(
  "%j is neutralised",
  (text) => {
    expect(guardCell(text)).toBe(`'${text}`);
  },
);

test("a negative number stays a number", () => {
  expect(guardCell("-5.2")).toBe("-5.2");
  expect(guardCell("-5,2")).toBe("-5,2");
});

test("a day typed in any order and dress is that day", () => {
  const monthNames = ["Jan", "February", "mar", "APR", "May", "Jun", "July", "Aug", "Sept", "Oct", "November", "Dec"];
  fc.assert(
    fc.property(fc.integer({ min: -15_000, max: 20_000 }), fc.constantFrom("/", "-", ".", " "), (number, mark) => {
      const { year, month, day } = calendarDateOf(number);
      const two = (n: number) => String(n).padStart(2, "0");
      const rules = { thisYear: 2026 };
      const same = { date: { year, month, day } };
      expect(readDate([day, month, year].join(mark), { ...rules, order: "dmy" })).toMatchObject(same);
      expect(readDate([two(month), two(day), year].join(mark), { ...rules, order: "mdy" })).toMatchObject(same);
      expect(readDate([year, two(month), two(day)].join(mark), { ...rules, order: "dmy" })).toMatchObject(same);
      expect(readDate(`${day} ${monthNames[month - 1]} ${year}`, { ...rules, order: null })).toMatchObject(same);
    }),
  );
});

test("a number written with either mark, with thousands or without, is that number", () => {
  fc.assert(
    fc.property(fc.integer({ min: -99_999_999, max: 99_999_999 }), fc.integer({ min: 0, max: 3 }), (digits, decimals) => {
      const value = digits / 10 ** decimals;
      const plain = value.toFixed(decimals);
      const [whole = "", fraction] = plain.split(".");
      const grouped = (by: string) => whole.replace(/\B(?=(\d{3})+(?!\d))/g, by);
      const join = (left: string, mark: string) => (fraction === undefined ? left : `${left}${mark}${fraction}`);
      expect(readNumber(plain, ".")?.value).toBe(Number(plain) + 0);
      expect(readNumber(join(grouped("."), ","), ",")?.value).toBe(Number(plain) + 0);
      expect(readNumber(join(grouped(","), "."), ".")?.value).toBe(Number(plain) + 0);
      expect(readNumber(join(grouped("\u00a0"), ","), ",")?.value).toBe(Number(plain) + 0);
    }),
  );
});

test("no bytes make reading or preparing throw", async () => {
  const texts = fc.string({ unit: fc.constantFrom(..."ab,;\t\n\r\"'=019.-/ é\u0000\ufeff"), maxLength: 200 }).map(utf8);
  const headed = texts.map((bytes) => Uint8Array.from([...utf8("MRN;Bone;Side;Op date;Gain;Complication 1;DOB;Last seen\n"), ...bytes]));
  const any = fc.uint8Array({ maxLength: 300 }).map((bytes) => bytesOf(...bytes));
  let readable = 0;
  await fc.assert(
    fc.asyncProperty(fc.oneof(any, texts, headed), async (bytes) => {
      const { sheet, findings } = readSheet(bytes, { file: "x.csv" });
      expect(sheet !== null || findings.some(({ severity }) => severity === "error")).toBe(true);
      if (!sheet) return;
      readable++;
      const mapping = { columns: {}, units: { Gain: "mm" }, dates: "dmy", decimal: ".", values: {}, answers: {} } as const;
      const { counts, refused } = await prepare({ sheets: [sheet], mapping, ring, today });
      expect(refused.length).toBe(counts.rowsRefused);
    }),
    { numRuns: 400 },
  );
  expect(readable).toBeGreaterThan(50);
});

const sortedRows = (stripped: StrippedRows) => Object.values(stripped).map((rows) => rows.map((row) => JSON.stringify(row)).sort());

test("the order of files makes no difference to what is sent, unless they contradict each other", async () => {
  const [id, bone, day] = [
    fc.constantFrom("A1", "A2", "A3"),
    fc.constantFrom("Femur", "Tibia"),
    fc.constantFrom("14/02/2019", "15/03/2021"),
  ];
  // one value a person and day, so that no file contradicts another: what differs is who says it, and how it came by its day
  const statureOn = (MRN: string, on: string) => String(150 + MRN.charCodeAt(1) + (on === "14/02/2019" ? 0 : 3));
  const textOf = (list: readonly Record<string, string>[]) =>
    table(Object.fromEntries(Object.keys(list[0] ?? {}).map((header) => [header, list.map((row) => row[header] ?? "")])));
  const operations = fc
    .uniqueArray(fc.record({ id, bone, day, before: fc.boolean(), final: fc.boolean() }), {
      minLength: 1,
      maxLength: 5,
      selector: (one) => `${one.id}${one.bone}${one.day}`,
    })
    .map((list) =>
      list.map((one) => ({
        MRN: one.id,
        Bone: one.bone,
        Side: "L",
        "Op date": one.day,
        "Last seen": "15/03/2021",
        "Height pre-op (cm)": one.before ? statureOn(one.id, one.day) : "",
        "Final height (cm)": one.final ? statureOn(one.id, "15/03/2021") : "",
      })),
    );
  const heights = fc
    .uniqueArray(fc.record({ id, day, occasion: fc.constantFrom("", "before", "final", "other") }), {
      minLength: 1,
      maxLength: 5,
      selector: (one) => `${one.id}${one.day}`,
    })
    .map((list) =>
      list.map((one) => ({ MRN: one.id, "Date measured": one.day, "Stature (cm)": statureOn(one.id, one.day), Occasion: one.occasion })),
    );
  const persons = fc
    .uniqueArray(id, { minLength: 1 })
    .map((list) => list.map((MRN) => ({ MRN, Sex: MRN === "A1" ? "F" : "M", Smoking: "never" })));
  // a person without dates beside the same with them
  const undated = fc.uniqueArray(id, { minLength: 1 }).map((list) => list.map((MRN) => ({ MRN, Bone: "Tibia", Side: "R", Year: "2018" })));
  const files = fc.tuple(operations, operations, heights, heights, persons, undated);
  const bothRanks = { recorded: 0, taken: 0 };
  await fc.assert(
    fc.asyncProperty(files, fc.array(fc.nat(), { minLength: 6, maxLength: 6 }), async (lists, keys) => {
      const texts: readonly string[] = lists.map((list) => textOf(list as readonly Record<string, string>[]));
      const shuffled = texts.map((text, i) => [keys[i] ?? 0, text] as const).sort(([a], [b]) => a - b);
      const mapping = { dates: "dmy" } as const;
      const { rows } = await load(texts, { mapping });
      for (const { bodyDayFrom } of rows.bodyMeasure) bothRanks[bodyDayFrom === "recorded" ? "recorded" : "taken"]++;
      const other = await load(
        shuffled.map(([, text]) => text),
        { mapping },
      );
      expect(sortedRows(other.rows)).toEqual(sortedRows(rows));
    }),
    { numRuns: 80 },
  );
  expect(Math.min(bothRanks.recorded, bothRanks.taken)).toBeGreaterThan(20);
});

test("the order of a file's rows makes no difference to what is sent", async () => {
  const someone = fc.record({
    MRN: fc.constantFrom("A1", "A2", "A3", "A4"),
    Bone: fc.constantFrom("Femur", "Tibia"),
    Side: fc.constantFrom("L", "R"),
    "Op date": fc.constantFrom("14/02/2019", "15/03/2021", "16/04/2023"),
    "Gain (mm)": fc.constantFrom("", "45", "60"),
    "Complication 1": fc.constantFrom("", "none", "DVT", "Knee stiffness"),
    "Height pre-op (cm)": fc.constantFrom("", "150"),
  });
  const rows = fc.uniqueArray(someone, {
    minLength: 2,
    maxLength: 8,
    selector: (row) => `${row.MRN}${row.Bone}${row.Side}${row["Op date"]}`,
  });
  await fc.assert(
    fc.asyncProperty(rows, async (all) => {
      const textOf = (list: readonly Record<string, string>[]) =>
        table(Object.fromEntries(Object.keys(list[0] ?? {}).map((header) => [header, list.map((row) => row[header] ?? "")])));
      const sent = async (list: readonly Record<string, string>[]) => {
        const { rows: stripped } = await load(textOf(list), { mapping: { dates: "dmy" } });
        return sortedRows(stripped);
      };
      expect(await sent([...all].reverse())).toEqual(await sent(all));
    }),
    { numRuns: 60 },
  );
});
