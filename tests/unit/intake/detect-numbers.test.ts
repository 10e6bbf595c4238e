import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { detectInCell, type SuspicionKind } from "../../../lib/intake/detect";
import { hasGs1Check, hasLuhnCheck } from "../../../lib/intake/detect/check-digits/luhn";
import { hasLongMod11Check, hasMod11Check } from "../../../lib/intake/detect/check-digits/mod11";
import { hasVerhoeffCheck } from "../../../lib/intake/detect/check-digits/verhoeff";
import { falling } from "../../../lib/intake/detect/check-digits/weighted";
import { nationalNumbers } from "../../../lib/intake/detect/numbers/national";
import { scientificNumber } from "../../../lib/intake/detect/numbers/scientific";

const levelOf = (text: string, kind: SuspicionKind, header?: string) =>
  detectInCell(text, header === undefined ? {} : { header }).find((each) => each.kind === kind)?.level;

// Published examples of documentation and of test suites (python-stdnum's unless another source is named), reserved ranges, or numbers
// computed from the published rule; none was taken from a person.
const blocked: readonly [SuspicionKind, ...string[]][] = [
  // NHS Data Dictionary; 671 668 9966 from the documentation of a validation package
  ["nhs-number", "9434765870", "943 476 5870", "943-476-5870", "943.476.5870", "671 668 9966"],
  // tests of Public Health Scotland's R package phsmethods: modulus 11, leap day, both moduli, modulus 10 alone; the third without its zero
  ["chi-number", "1904851231", "190485 1231", "2902201230", "0101011237", "0101201234", "101011237"],
  ["irish-pps", "6433435F", "6433435FT", "6433435FW", "6433435OA", "6433435IH", "1234567T", "1234567FA", "6433435 f"],
  // core range 812 to 859; synthetic, by the rule of the GS1 prefix and both published weightings
  ["irish-ihi", "000000081200000137", "000000081234567866", "8120000013"],
  ["canadian-sin", "123-456-782", "130692544"],
  ["bc-phn", "9698 658 215", "9698658215"],
  // worked example quoted from the NEHTA conformance profile; the second a public code example
  ["australian-medicare", "2123 45670 1", "2951 8731 2 5 1", "2951873125 1"],
  // sample of the Australian FHIR base profile (from memory; its Luhn sum holds)
  ["australian-ihi", "8003608166690503", "8003 6081 6669 0503"],
  // synthetic and test-card samples; the rule of the German Wikipedia article
  ["german-kvnr", "A123456780", "T555558879", "X110465770", "a 123 456 780"],
  ["french-nir", "2 95 10 99 126 111 93", "253072B07300470", "253072A07300443"],
  ["indian-aadhaar", "234123412346", "2341 2341 2346"],
  ["dutch-bsn", "1112.22.333", "111222333"],
];

describe("numbers that check themselves are blocked", () => {
  for (const [kind, ...texts] of blocked) test.each(texts)(`${kind}: %s`, (text) => expect(levelOf(text, kind)).toBe("block"));
});

const notOfTheKind: readonly [SuspicionKind, ...string[]][] = [
  // 999 123 4560: the check computed is 10, though a library's page calls it valid
  ["nhs-number", "9434765871", "000 000 0001", "999 123 4560", "1234567890", "9434765807"],
  // day 32, month 13, 1919 no leap year, wrong check, no day at all, no day with its zero back
  ["chi-number", "3201209999", "0113209999", "2902191230", "1904851232", "0101201233", "0000000000", "123456789"],
  ["irish-pps", "6433435E", "6433435VH"],
  ["irish-ihi", "000000081200000138", "000000081234567867", "8120000014"],
  ["canadian-sin", "999-999-999", "823456785", "12345678Z", "046 454 286"],
  ["bc-phn", "9698648215", "5736504210"],
  ["australian-medicare", "21234567891", "2123 45671 1", "1123 45670 1"],
  ["australian-ihi", "8003601111111111", "4111111111111111"],
  // A123456789 is printed as an example of the format and fails the check
  ["german-kvnr", "A123456789", "M310119800"],
  ["french-nir", "295109912611199", "253072C07300443", "6546546546546703"],
  ["indian-aadhaar", "234123412347", "123412341234", "222222222222", "643343121"],
  ["dutch-bsn", "1112.52.333"],
];

describe("numbers that only look like it are not of the kind", () => {
  for (const [kind, ...texts] of notOfTheKind) test.each(texts)(`${kind}: %s`, (text) => expect(levelOf(text, kind)).not.toBe("block"));
});

describe("what has the shape only warns and never blocks", () => {
  test.each(["0000000000", "1111111111", "9999999999"])("%s passes the arithmetic, or all digits are alike", (text) => {
    for (const header of [undefined, "NHS no"]) {
      const found = detectInCell(text, header === undefined ? {} : { header });
      expect(found.length).toBeGreaterThan(0);
      expect(found.map(({ level }) => level)).not.toContain("block");
    }
  });
  // advertising range; parts that are never given (area 666, 000, group 00, serial 0000)
  test.each(["987-65-4320", "987-65-4329", "666-00-0000", "000-12-3456", "123-00-4567", "123-45-0000"])(
    "%s is shaped as an SSN",
    (text) => {
      expect(levelOf(text, "us-ssn")).toBe("warn");
      expect(levelOf(text, "us-ssn", "SSN")).toBe("warn");
    },
  );
  test("1234567890 is a long number, not a health number", () => {
    expect(detectInCell("1234567890")).toEqual([{ kind: "long-number", score: 1, level: "warn" }]);
    expect(levelOf("1234567890", "record-number", "MRN")).toBe("warn");
  });
  // numbers of the range kept for tests, one that passes the check by construction
  test("999 is the range for tests", () => {
    const passing = Array.from({ length: 10 }, (_, check) => `999000001${check}`).filter(hasMod11Check);
    expect(passing).toHaveLength(1);
    expect(levelOf(passing[0] ?? "", "nhs-number", "NHS number")).toBe("warn");
  });
});

describe("social security numbers", () => {
  test("a well-formed one warns, and blocks under its header, with or without hyphens", () => {
    expect(levelOf("123-45-6789", "us-ssn")).toBe("warn");
    expect(levelOf("123-45-6789", "us-ssn", "SSN")).toBe("block");
    expect(levelOf("123456789", "us-ssn", "Social security number")).toBe("block");
    expect(levelOf("123456789", "us-ssn")).toBeUndefined();
  });
  test("misplaced hyphens are none", () => expect(levelOf("1112-23333", "us-ssn", "SSN")).toBeUndefined());
});

describe("forms in which numbers hide", () => {
  test.each([
    ["hyphens that don't break", "943\u2011476\u20115870"],
    ["en dashes", "943\u2013476\u20135870"],
    ["minus signs", "943\u2212476\u22125870"],
    ["no-break spaces", "943\u00a0476\u00a05870"],
    ["zero-width spaces", "943\u200b476\u200d5870"],
    ["a byte-order mark", "\ufeff9434765870"],
    ["full-width digits", "９４３４７６５８７０"],
    ["Arabic digits", "٩٤٣٤٧٦٥٨٧٠"],
    ["dots and slashes", "943.476/5870"],
    ["a decimal zero", "9434765870.0"],
    ["pairs", "94 34 76 58 70"],
    ["words around", "see NHS no 943 476 5870 please"],
    ["another number before", "gain 40 943 476 5870"],
    ["no digit lost in scientific notation", "9.434765870E+09"],
  ])("%s", (_, text) => expect(levelOf(text, "nhs-number")).toBe("block"));

  test.each(["9.43477E+09", "9,43477E+09", "1.2e+10", "4E+15"])("%s lost its digits to a spreadsheet: blocked", (text) => {
    expect(levelOf(text, "number-lost-to-spreadsheet")).toBe("block");
  });
  test.each(["1.2E+01", "1.5e-3", "3E5", "1.234E+03"])("%s is a measurement", (text) => expect(detectInCell(text)).toEqual([]));
  test("digits of scientific notation are read where none is lost", () => {
    expect(scientificNumber("9.434765870E+09")).toEqual({ lost: false, digits: "9434765870" });
    expect(scientificNumber("9.43477E+09")).toEqual({ lost: true, digits: "" });
    expect(scientificNumber("9.43477")).toBeNull();
  });

  test.each(["10/12/14/16/18", "2019-2024", "10/12/14/16", "40.5 45.5 50.5 55.5", "65.25", "-12", "1652"])(
    "%s is no number of anyone's",
    (text) => {
      expect(detectInCell(text)).toEqual([]);
    },
  );
});

describe("headers and words that announce a number", () => {
  test.each([
    "MRN",
    "Hospital No.",
    "hosp num",
    "NHS",
    "CHI",
    "PAS number",
    "Unit no",
    "Patient ID",
    "Case note",
    "Record no",
    "Accession",
    "Study ID",
  ])("under %s a number of any length is a record number", (header) => {
    expect(levelOf("48213", "record-number", header)).toBe("block");
    expect(levelOf("A-48213", "record-number", header)).toBe("block");
    expect(levelOf("femur", "record-number", header)).toBeUndefined();
  });
  test("the word in the cell does the same", () => {
    expect(levelOf("MRN 482133", "record-number")).toBe("block");
    expect(levelOf("hospital no: 48213", "record-number")).toBe("block");
  });
  test.each(["Gain (mm)", "Chip", "Chair", "Number of levels", "Device"])("%s announces none", (header) => {
    expect(detectInCell("48213", { header })).toEqual([]);
  });
  test.each(["Serial", "Nail serial no", "Lot no", "Volume"])("a check digit that holds under %s warns only", (header) => {
    expect(levelOf("9434765870", "nhs-number", header)).toBe("warn");
    expect(levelOf("a.b@example.org", "email", header)).toBe("block");
  });
});

describe("check digits find every wrong digit", () => {
  const wrongOnes = (digits: string) =>
    [...digits].flatMap((digit, at) =>
      Array.from({ length: 10 }, (_, other) => `${digits.slice(0, at)}${other}${digits.slice(at + 1)}`).filter(
        (text) => text !== digits && digit !== "",
      ),
    );
  // one wrong digit is found by each of these rules (property of the moduli: weights prime to them)
  test.each([
    ["modulus 11", "9434765870", hasMod11Check],
    ["Luhn", "130692544", hasLuhnCheck],
    ["Luhn, 16 digits", "8003608166690503", hasLuhnCheck],
    ["Verhoeff", "234123412346", hasVerhoeffCheck],
    ["GS1", "000000081200000137", hasGs1Check],
  ])("%s", (_, digits, holds) => {
    expect(holds(digits)).toBe(true);
    expect(wrongOnes(digits).filter(holds)).toEqual([]);
    expect(wrongOnes(digits)).toHaveLength(digits.length * 9);
  });
  // Verhoeff's own claim: every swap of unlike neighbours is found
  test("Verhoeff finds swapped neighbours", () => {
    const digits = "234123412346";
    for (let at = 0; at + 1 < digits.length; at++) {
      const swapped = `${digits.slice(0, at)}${digits[at + 1]}${digits[at]}${digits.slice(at + 2)}`;
      expect(hasVerhoeffCheck(swapped)).toBe(digits[at] === digits[at + 1]);
    }
  });
  // 236 with check 3 is the worked example of the encyclopaedia's article on the algorithm (from memory)
  test("Verhoeff's check of 236 is 3", () =>
    expect(Array.from({ length: 10 }, (_, d) => d).filter((d) => hasVerhoeffCheck(`236${d}`))).toEqual([3]));

  test("the long modulus 11 and the short one agree where the prefix is zero", () => {
    expect(hasLongMod11Check("00000008120000013")).toBe(true);
    expect(hasLongMod11Check("00000008120000014")).toBe(false);
    expect(falling(10, 9)).toEqual([10, 9, 8, 7, 6, 5, 4, 3, 2]);
  });

  // a random ten-digit number passes modulus 11 about 10/11 of one time in ten; six standard deviations of 20 000 draws
  test("one random number in eleven passes modulus 11", () => {
    let passed = 0;
    for (let n = 0; n < 20_000; n++) if (hasMod11Check(String(1_000_000_000 + ((n * 449_999_993) % 8_999_999_999)))) passed++;
    expect(Math.abs(passed / 20_000 - 1 / 11)).toBeLessThan(6 * Math.sqrt((1 / 11) * (10 / 11) * (1 / 20_000)));
  });
});

test("no detector throws, whatever the cell, and none repeats it", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 200 }), fc.constantFrom("", "NHS no", "Name", "DOB", "Serial"), (text, header) => {
      for (const suspicion of detectInCell(text, { header, coded: true })) {
        expect(Object.keys(suspicion).sort()).toEqual(["kind", "level", "score"]);
        expect(suspicion.level).toBe(suspicion.score >= 3 ? "block" : "warn");
      }
    }),
  );
});

test("each national number is looked at in lengths that a candidate can have", () => {
  for (const { lengths } of nationalNumbers) for (const length of lengths) expect(length >= 7 && length <= 19).toBe(true);
});
