import { describe, expect, test } from "vitest";
import { fieldsOf, labelOfCode, tableNames } from "@/lib/codebook";
import { describeCell, detectInCell, detectInFileName, detectInHeader, knownWordsOf, type SuspicionKind } from "../../../lib/intake/detect";

const found = (text: string, header?: string) => detectInCell(text, header === undefined ? {} : { header });
const levelOf = (text: string, kind: SuspicionKind, header?: string) => found(text, header).find((each) => each.kind === kind)?.level;

describe("text that is blocked", () => {
  test.each([
    ["Mr Testpatient reviewed", "name"],
    ["pt name is Zed Example", "name"],
    ["Drs Alpha and Beta", "name"],
    ["van der Sample, J.", "name"],
    ["NHS no 943 476 5870", "nhs-number"],
    ["943\u2011476\u20115870", "nhs-number"],
    ["９４３４７６５８７０", "nhs-number"],
    ["call 07700 900461", "phone"],
    ["a.b@example.org", "email"],
    ["lives SW1A 1AA", "postcode"],
    ["DOB 09/03/1999", "date"],
  ] as const)("%s: %s", (text, kind) => expect(levelOf(text, kind)).toBe("block"));

  test.each([
    "mr testpatient reviewed",
    "MR TESTPATIENT",
    "MRS GREEN",
    "Mr & Mrs Sample",
    "Miss J Sample",
    "Prof. Sample",
    "Dr. Turner",
    "Mr Paley",
    "Mme Exemple",
    "Herr Muster",
    "name: Zed",
    "Patient named Zed",
    "surgeon Sample",
    "Seen by Sample",
    "seen by Dr Sample",
    "consultant: Sample",
    "Zed Example, MD",
    "Sample, J.",
    "SAMPLE, J",
    "Öztest, Ü.",
    "Zed O'Sample-Example MD",
  ])("a name: %s", (text) => expect(levelOf(text, "name")).toBe("block"));
});

describe("text that may be a name warns", () => {
  test.each([
    "Zed Example",
    "Example Zed",
    "EXAMPLE Zedson",
    "Zed M. Example",
    "J. Sample",
    "van der Sample",
    "ibn Sample",
    "mother Zelda",
    "Patient Zed declined",
  ])("%s", (text) => expect(levelOf(text, "name")).toBe("warn"));
});

describe("text that passes without a word", () => {
  test.each([
    "Turner syndrome, 5 cm femur",
    "Ilizarov frame 12/52",
    "power 5/5 L4 L5",
    "T12-L1",
    "ratio 0.98",
    "1 mm/day in 4 steps",
    "HI 35.2 d/cm",
    "Grade 2 (4/12)",
    "DN55",
    "S1 nerve",
    "MAD 12 mm medial",
    "gain 4cm@12wk",
    "@home",
    "x@y",
    "0.75 mm/day",
    "2019-2024",
    "10/12/14/16",
    "HI 35-42",
    "1.2.3",
    "999.1.1.1",
    "v1.2.3.4",
    "3.5.1.2",
    "AO/OTA",
    "n/a",
    "and/or",
    "3/12 post-op",
    "5/5 power",
    "1/52",
    "2/7",
    "45.36",
    "45360",
    "L4/5",
    "T12 L3",
    "S1 2CM",
    "L4 5S1",
    "QA1 1AA",
    "V1 1AA",
    "X1 1AA",
    "SW1A 1CI",
    "MR scan left knee",
    "MR arthrogram",
    "Femur, L",
    "Tibia, Right",
    "K-wire",
    "Silver-Russell",
    "De Bastiani",
    "von Recklinghausen",
    "advised rest",
    "12:30",
    "Fixator + nail",
    "",
    "  ",
  ])("%j", (text) => expect(found(text)).toEqual([]));

  // surnames that name a method or a syndrome
  test.each(
    "Ilizarov Paley Ollier Blount Perthes Ender Kirschner Schanz Russell Silver Turner Larsen Morquio"
      .split(" ")
      .flatMap((name) => [name, `${name} disease`, `${name} Syndrome`, `${name.toUpperCase()} NAIL`, `treated by ${name} method`]),
  )("%s", (text) => expect(found(text)).toEqual([]));

  // every spelling that a coded cell can have
  test("no code, label or alias of the codebook is suspected", () => {
    const spellings = tableNames.flatMap((table) =>
      fieldsOf(table).flatMap(([, field]) => (field.kind === "code" ? [...field.codes, ...Object.keys(field.values ?? {})] : [])),
    );
    expect(spellings.length).toBeGreaterThan(300);
    const suspected = spellings
      .flatMap((code) => [
        code,
        labelOfCode(code),
        code.toUpperCase(),
        labelOfCode(code).replace(/(^| )\p{L}/gu, (letter) => letter.toUpperCase()),
      ])
      .filter((text) => detectInCell(text, { coded: true }).length > 0);
    expect(suspected).toEqual([]);
  });

  test("no header that the codebook knows is an identifier itself", () => {
    const headers = tableNames.flatMap((table) => fieldsOf(table).flatMap(([id, field]) => [id, field.label, ...(field.aliases ?? [])]));
    expect(headers.length).toBeGreaterThan(300);
    expect(headers.filter((header) => detectInHeader(header).length > 0)).toEqual([]);
  });
});

describe("contacts", () => {
  // RFC 2606 domains
  test.each(["a.b+tag@example.org", "mail a_b@mail.example.co.uk now", "Ａ.b@example.org", "<z@example.com>"])("e-mail: %s", (text) =>
    expect(levelOf(text, "email")).toBe("block"),
  );
  test.each(["a@b", "a@example.", "@example.org", "a b@", "4cm@12wk.5"])("no e-mail: %s", (text) =>
    expect(levelOf(text, "email")).toBeUndefined(),
  );

  // numbers kept for drama (Ofcom) and fiction (555-0100 to 555-0199)
  test.each(["07700 900461", "07700900461", "(020) 7946 0958", "0131 496 0123", "202-555-0143", "(202) 555-0143", "555-0123"])(
    "phone: %s",
    (text) => {
      expect(levelOf(text, "phone")).toBe("warn");
      expect(levelOf(text, "phone", "Tel")).toBe("block");
      expect(levelOf(`phone ${text}`, "phone")).toBe("block");
    },
  );
  test.each(["+44 7700 900461", "+447700900461", "+1 202 555 0143", "+44 (0)20 7946 0958"])(
    "%s is a phone number and nothing else",
    (text) => expect(levelOf(text, "phone")).toBe("block"),
  );
  test.each(["0.75 mm/day", "2019-2024", "10/12/14/16", "HI 35-42", "+10", "0123", "ratio 0.123456789012"])("no phone: %s", (text) =>
    expect(levelOf(text, "phone", "Tel")).toBeUndefined(),
  );

  // RFC 5737 and RFC 3849
  test.each(["192.0.2.1", "198.51.100.7", "203.0.113.9", "2001:db8::1", "from 192.0.2.1 today", "2001:db8:0:0:0:0:0:1"])("IP: %s", (text) =>
    expect(levelOf(text, "ip-address")).toBe("warn"),
  );
  test("single digits are an address where something says so", () => {
    expect(levelOf("1.2.3.4", "ip-address", "IP address")).toBe("block");
    expect(levelOf("3.5.1.2", "ip-address")).toBeUndefined();
  });
  test.each(["12:30:45", "999.1.1.1", "1.2.3", "v1.2.3.4", "1.2.3.4.5", "256.1.2.30"])("no IP: %s", (text) =>
    expect(levelOf(text, "ip-address")).toBeUndefined(),
  );

  test.each(["https://example.com/p?id=1", "www.example.org", "see ftp://example.net/a", "HTTPS://EXAMPLE.COM"])("URL: %s", (text) =>
    expect(levelOf(text, "url")).toBe("block"),
  );
});

describe("postcodes", () => {
  const codes = [
    "SW1A 1AA",
    "M1 1AE",
    "B33 8TH",
    "CR2 6XH",
    "DN55 1PT",
    "W1A 0AX",
    "EC1A 1BB",
    "GIR 0AA",
    "EC1A1BB",
    "ec1a 1bb",
    "BFPO 12",
    "ZZ99 3VZ",
  ];
  test.each(codes)("%s warns, and is blocked under its header", (text) => {
    expect(levelOf(text, "postcode")).toBe("warn");
    expect(levelOf(text, "postcode", "Postcode")).toBe("block");
  });
  test("five digits are one under a header that says so", () => {
    expect(levelOf("10013", "postcode", "ZIP")).toBe("block");
    expect(levelOf("10013-0001", "postcode", "Zip code")).toBe("block");
    expect(found("10013")).toEqual([]);
  });
});

describe("dates", () => {
  test.each([
    "2024-03-09",
    "9 March 2024",
    "9/3/24",
    "09.03.2024",
    "09-03-2024",
    "9. März 2024",
    "March 9, 2024",
    "9th Mar '24",
    "09-Mar-2024",
    "2024/03/09",
    "20240309",
    "3/25/2024",
    "29/2/2024",
    "op on 09/03/1999 uneventful",
    "2024-03-09 10:30",
    "2024-03-09T10:30:00Z",
    "09\u201103\u20111999",
    "０９/０３/１９９９",
  ])("%s warns, and is blocked under a header of birth", (text) => {
    expect(levelOf(text, "date")).toBe("warn");
    expect(levelOf(text, "date", "DOB")).toBe("block");
  });
  test.each(["32/1/2024", "31.13.2024", "29/2/2023", "3/12", "1/52", "45.36", "10/12/14/16", "1.2.3", "20241309", "2024"])(
    "no date: %s",
    (text) => expect(levelOf(text, "date", "DOB")).toBeUndefined(),
  );

  // serial 45360 is 9 March 2024; 25569 to 55153 are 1970 to 2050
  test("a serial day of a spreadsheet counts under a header of dates", () => {
    expect(levelOf("45360", "date", "DOB")).toBe("block");
    expect(levelOf("45360.5", "date", "Date of birth")).toBe("block");
    expect(levelOf("25569", "date", "DOB")).toBe("block");
    expect(levelOf("55153", "date", "DOB")).toBe("block");
    for (const text of ["25568", "55154", "45.36"]) expect(levelOf(text, "date", "DOB")).toBeUndefined();
    expect(found("45360", "Gain")).toEqual([]);
  });

  test.each(["12/2023", "03.2024", "March 2024", "Mar-2024"])("%s is a month with its year: no date, yet more than a year", (text) => {
    expect(found(text).map(({ kind, level }) => `${kind} ${level}`)).toEqual(["month-and-year warn"]);
  });
});

describe("names under a header and from the file itself", () => {
  test.each(["Name", "Surname", "Forename", "Consultant", "Surgeon", "GP", "Nom", "Nombre", "Naam", "Operator", "Next of kin"])(
    "%s",
    (header) => {
      expect(levelOf("zedson", "name", header)).toBe("block");
      expect(levelOf("femur", "name", header)).toBeUndefined();
      expect(levelOf("12", "name", header)).toBeUndefined();
    },
  );
  test("a thing's name is no person's", () => expect(found("Zedomatic", "Device name")).toEqual([]));

  test("words of the file's own name columns are found in other cells, short and ordinary ones are not looked for", () => {
    const known = knownWordsOf(["Zedson, Al", "O'Sample", "Turner", "Long", "AB12345"]);
    expect([...known].sort()).toEqual(["ab12345", "sample", "zedson"]);
    const level = (text: string) => detectInCell(text, { known })[0]?.level;
    expect(level("revised by zedson, doing well")).toBe("block");
    expect(level("ÖSAMPLE")).toBeUndefined();
    expect(level("see AB12345")).toBe("block");
    expect(level("Turner, long leg")).toBeUndefined();
    expect(level("zedsons")).toBeUndefined();
  });
});

describe("headers, sheet names and file names", () => {
  test.each(["Mr Testpatient", "943 476 5870", "a.b@example.org", "Gain of Sample, J.", "DOB 09/03/1999"])(
    "header %s is blocked",
    (header) => expect(detectInHeader(header)[0]?.level).toBe("block"),
  );
  test.each(["DOB", "Surgeon", "NHS no", "Date of surgery (dd/mm/yyyy)", "Gain [mm]", "Postcode", "Complication 1 date", "Name"])(
    "header %s passes",
    (header) => expect(detectInHeader(header)).toEqual([]),
  );
  test.each(["Mr_Testpatient.csv", "9434765870.csv", "NHS 943-476-5870.xlsx", "mail a.b@example.org.csv"])("file %s is blocked", (name) =>
    expect(detectInFileName(name)[0]?.level).toBe("block"),
  );
  test("file Zed_Example.csv warns", () => expect(detectInFileName("Zed_Example.csv")[0]).toMatchObject({ kind: "name", level: "warn" }));
  test.each(["lengthenings_2024-03-09.csv", "unit 20240309.csv", "femur_2019-2024 (2).csv", "report.csv", "export_1709985600.csv"])(
    "file %s passes",
    (name) => expect(detectInFileName(name)).toEqual([]),
  );
});

describe("free text", () => {
  const sentence = "the frame was adjusted and the pin sites were clean at each visit";
  test("a sentence among codes is blocked; elsewhere it is not", () => {
    expect(detectInCell(sentence, { coded: true })[0]).toMatchObject({ kind: "free-text", level: "block" });
    expect(detectInCell(sentence)).toEqual([]);
  });
  test("what is longer than a cell may be is blocked unread", () => expect(levelOf("femur ".repeat(2000), "free-text")).toBe("block"));
});

describe("a cell in words", () => {
  test.each([
    ["Zed Example", "text, 10 letters"],
    ["9434765870", "a number, 10 digits"],
    ["-12,5", "a number, 3 digits"],
    ["AB-00123", "text, 2 letters and 5 digits"],
    ["09/03/1999", "a date"],
    ["9 March 1999", "a date"],
    ["?", "1 sign"],
    ["--", "2 signs"],
    [" ", "nothing"],
    ["x", "text, 1 letter"],
  ])("%j is %s", (text, words) => expect(describeCell(text)).toBe(words));
});

// Work grows with the text: the longest texts that tempt a pattern to start again at each character are read within the runner's limit
describe("hostile texts end", () => {
  const million = 1_000_000;
  const fill = (unit: string) => unit.repeat(Math.ceil(million / unit.length));
  test.each([
    ["a@"],
    ["1"],
    ["1 "],
    ["1-"],
    ["a@a."],
    ["Aa, "],
    ["Mr "],
    ["0 "],
    ["::"],
    ["9/"],
    ["Aa'-"],
    ["van "],
    ["+1("],
    ["\u0300"],
    ["ﷺ"],
    ["http://"],
  ])("a megabyte of %j", (unit) => {
    // whole and in cells as long as a file may hold
    detectInCell(fill(unit), { header: "NHS no", coded: true });
    const cell = fill(unit).slice(0, 10_000);
    for (let n = 0; n < 100; n++) detectInCell(`${cell.slice(0, -4)}${n}`, { coded: true });
    expect(detectInCell(fill(unit)).map(({ kind }) => kind)).toContain("free-text");
  });
});
