import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { detectInCell, detectInColumn, makeColumnDetector } from "../../../lib/intake/detect";
import { looksLikeRecordNumbers } from "../../../lib/intake/detect/record-numbers";
import { scoreOf, suspicionOf } from "../../../lib/intake/detect/suspicion";

describe("points", () => {
  // form 1, proof 2, announced 2, half of the column 2; 3 blocks (our choice; no source)
  test.each([
    [{}, false, 1, "warn"],
    [{ proof: true }, false, 3, "block"],
    [{ announced: true }, false, 3, "block"],
    [{}, true, 3, "block"],
    [{ proof: true, announced: true }, true, 7, "block"],
    [{ shapeOnly: true }, false, 1, "warn"],
    [{ shapeOnly: true, proof: true, announced: true }, true, 2, "warn"],
  ] as const)("%j, in half of the column %s: %i, %s", (evidence, inHalf, score, level) => {
    expect(scoreOf(evidence, inHalf)).toBe(score);
    expect(suspicionOf({ kind: "date", ...evidence }, inHalf)).toEqual({ kind: "date", score, level });
  });
});

const levels = (cells: readonly string[], context = {}) =>
  detectInColumn(cells, context).map(({ at, suspicions }) => `${at} ${suspicions[0]?.kind} ${suspicions[0]?.level}`);

describe("a column", () => {
  test("a form that warns alone is blocked where half of the filled cells have it", () => {
    expect(levels(["12/03/2024", "femur", "", "tibia"])).toEqual(["0 date warn"]);
    expect(levels(["12/03/2024", "femur", "", "13/03/2024", " ", "tibia"])).toEqual(["0 date block", "3 date block"]);
    expect(levels(["12/03/2024"])).toEqual(["0 date warn"]);
  });

  test("names count by how many differ: a make that rows share is no one's name", () => {
    expect(levels(["Zed Example", "Yod Example", "femur"])).toEqual(["0 name block", "1 name block"]);
    expect(
      levels(["Nailomat Zedding", "Nailomat Zedding", "NAILOMAT ZEDDING", "Nailomat Zedding", "x"]).every((each) => each.endsWith("warn")),
    ).toBe(true);
  });

  test("test numbers never block, however many", () =>
    expect(levels(["0000000000", "1111111111"], { header: "MRN" })).toEqual(["0 nhs-number warn", "1 nhs-number warn"]));

  test("numbers that all differ look like record numbers: warned", () => {
    const cells = Array.from({ length: 20 }, (_, at) => `K${48_000 + at * 17}`);
    expect(levels(cells)).toEqual(cells.map((_, at) => `${at} record-number warn`));
    expect(levels([...cells, ""])).toHaveLength(20);
  });
});

describe("record numbers by their looks", () => {
  const numbers = (n: number, of: (at: number) => string) => Array.from({ length: n }, (_, at) => of(at));
  test.each([
    ["five digits, all different", numbers(20, (at) => `${10_000 + at}`), true],
    ["twelve characters, 60 % digits", numbers(10, (at) => `ABCD${10_000_000 + at}`), true],
    ["one of twenty repeated", [...numbers(19, (at) => `${10_000 + at}`), "10000"], true],
    ["two of twenty repeated", [...numbers(18, (at) => `${10_000 + at}`), "10000", "10001"], false],
    ["seven cells", numbers(7, (at) => `${10_000 + at}`), false],
    ["four digits", numbers(20, (at) => `${1000 + at}`), false],
    ["thirteen characters", numbers(20, (at) => `${1_000_000_000_000 + at}`), false],
    ["decimals", numbers(20, (at) => `${100 + at}.25`), false],
    ["decimal commas", numbers(20, (at) => `${100 + at},25`), false],
    ["fewer than 60 % digits", numbers(20, (at) => `ABCDE${10 + at}`), false],
    ["one word among them", [...numbers(20, (at) => `${10_000 + at}`), "femur"], false],
    ["blanks apart", [...numbers(20, (at) => `${10_000 + at}`), "", " "], true],
  ] as const)("%s", (_, cells, expected) => expect(looksLikeRecordNumbers(cells)).toBe(expected));
});

describe("the quick path", () => {
  test("a compiled detector says what the plain one says, of every cell and header", () => {
    const cell = fc.oneof(
      fc.double({ noNaN: true }).map(String),
      fc.integer({ min: -99_999, max: 9_999_999 }).map(String),
      fc.constantFrom(
        "9434765870",
        "45360",
        "10013",
        "femur",
        "12,5",
        "+3",
        "-",
        "",
        ".",
        "1.2.3",
        "0 000 000",
        "123456.123456",
        "1234567",
      ),
    );
    fc.assert(
      fc.property(
        fc.array(cell, { maxLength: 12 }),
        fc.constantFrom("", "Gain", "MRN", "DOB", "ZIP", "Serial", "Tel", "Name"),
        (cells, header) => {
          const detector = makeColumnDetector({ header, coded: true });
          for (const text of [...cells, ...cells]) expect(detector.cell(text)).toEqual(detectInCell(text, { header, coded: true }));
        },
      ),
    );
  });

  test("equal cells are looked at once", () => {
    let asked = 0;
    const known = new Set(["zedson"]);
    known.has = (word) => {
      asked++;
      return Set.prototype.has.call(known, word);
    };
    const detector = makeColumnDetector({ known });
    detector.column(new Array(1000).fill("magnetic nail"));
    expect(asked).toBe(2); // two words, once
  });

  // 3 000 000 plain numbers, as 100 000 rows of 30 columns hold
  test("three million measurements are passed over within the runner's limit", () => {
    const cells = Array.from({ length: 100_000 }, (_, at) => (at / 7).toFixed(1));
    const detector = makeColumnDetector({ header: "Gain (mm)", coded: true });
    let suspected = 0;
    for (let column = 0; column < 30; column++) for (const cell of cells) suspected += detector.cell(cell).length;
    expect(suspected).toBe(0);
  });
});
