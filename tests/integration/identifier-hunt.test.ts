import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deflateSync, gzipSync } from "node:zlib";
import Database from "better-sqlite3";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { makeHunt, type Trace } from "./identifier-hunt";

// invented; the number is the published example of a health number, the date no one's
const planted = {
  names: ["Öztest, Zelda", "Zedson", "Yods"],
  numbers: ["943 476 5870", "QX-7781"],
  dates: [{ year: 1999, month: 3, day: 9 }],
};
const hunt = makeHunt(planted);
const identifiers = (traces: readonly Trace[]) => [...new Set(traces.map(({ of }) => of))];
const around = (bytes: Buffer, before = "..", after = "..") => Buffer.concat([Buffer.from(before), bytes, Buffer.from(after)]);

describe("each identifier is found in each writing", () => {
  test.each([
    ["Öztest, Zelda", "Öztest, Zelda"],
    ["ÖZTEST, ZELDA", "Öztest, Zelda"],
    ["öztest, zelda", "Öztest, Zelda"],
    ["Oztest, Zelda", "Öztest, Zelda"],
    ["oztest, zelda", "Öztest, Zelda"],
    ["O\u0308ztest, Zelda", "Öztest, Zelda"],
    ["Zelda Öztest", "Öztest, Zelda"],
    ["ÖztestZelda", "Öztest, Zelda"],
    ["Öztest_Zelda", "Öztest, Zelda"],
    ["xZedsonx", "Zedson"],
    ["zedson", "Zedson"],
    ["yods", "Yods"],
    ["943 476 5870", "943 476 5870"],
    ["943-476-5870", "943 476 5870"],
    ["9434765870", "943 476 5870"],
    ["qx-7781", "QX-7781"],
    ["QX7781", "QX-7781"],
    ...[
      "1999-03-09",
      "1999/03/09",
      "1999.03.09",
      "09.03.1999",
      "9.3.1999",
      "09/03/1999",
      "9/3/1999",
      "03/09/1999",
      "3/9/1999",
      "09-03-1999",
      "09.03.99",
      "9.3.99",
      "09/03/99",
      "9/3/99",
      "99-03-09",
      "19990309",
      "09031999",
      "990309",
      "090399",
      "9 March 1999",
      "9 Mar 1999",
      "09-Mar-1999",
      "March 9, 1999",
      "1999-03-09T10:00:00Z",
      '{"year":1999,"month":3,"day":9}',
      // 9 March 1999 by date -u -d 1999-03-09 +%s
      "920937600",
      "920937600000",
    ].map((text) => [text, "1999-3-9"] as [string, string]),
  ])("%s", (text, of) => expect(identifiers(hunt.inText("text", `before ${text} after`))).toEqual([of]));
});

describe("in each encoding", () => {
  const name = "Öztest, Zelda";
  const utf16be = (text: string) => Buffer.from(text, "utf16le").swap16();
  test.each([
    ["UTF-8", Buffer.from(name)],
    ["UTF-16LE", Buffer.from(name, "utf16le")],
    ["UTF-16BE", utf16be(name)],
    ["Windows-1252", Buffer.from(name, "latin1")],
    ["percent-encoded", Buffer.from("%C3%96ztest%2C%20Zelda")],
    ["small percent-encoded", Buffer.from("%c3%96ztest%2c%20Zelda")],
    ["form-encoded", Buffer.from("%C3%96ztest%2C+Zelda")],
    ["JSON escapes", Buffer.from("\\u00d6ztest, Zelda")],
    ["hexadecimal", Buffer.from(Buffer.from(name).toString("hex"))],
    ["every byte percent-encoded", Buffer.from([...Buffer.from(name)].map((byte) => `%${byte.toString(16).toUpperCase()}`).join(""))],
  ])("%s", (_, bytes) => {
    expect(identifiers(hunt.inBytes("bytes", around(bytes)))).toContain("Öztest, Zelda");
    expect(identifiers(hunt.inBytes("odd place", around(bytes, ".")))).toContain("Öztest, Zelda");
  });

  test.each([0, 1, 2, 3, 4, 5])("base64 with %i bytes before it", (before) => {
    for (const [text, of] of [
      [name, name],
      ["Zedson", "Zedson"],
      ["1999-03-09", "1999-3-9"],
      ["9434765870", "943 476 5870"],
    ] as const) {
      const cell = `${"x".repeat(before)}${text}, more`;
      for (const bytes of [Buffer.from(cell), Buffer.from(cell, "utf16le")]) {
        expect(identifiers(hunt.inText("text", `{"a":"${bytes.toString("base64")}"}`))).toContain(of);
        expect(identifiers(hunt.inText("text", `?a=${bytes.toString("base64url")}`))).toContain(of);
      }
    }
  });

  test.each([
    ["UTF-16LE", (text: string) => Buffer.from(text, "utf16le")],
    ["UTF-16BE", utf16be],
  ])("numbers and dates in %s", (_, encode) => {
    expect(identifiers(hunt.inBytes("bytes", encode("a 9434765870 b 09.03.1999 c yods")))).toEqual(["943 476 5870", "1999-3-9", "Yods"]);
  });

  test("packed", () => {
    const text = Buffer.from("see Zedson");
    for (const pack of [gzipSync, deflateSync]) expect(identifiers(hunt.inBytes("packed", pack(text)))).toEqual(["Zedson"]);
  });

  test("a number kept as a number", () => {
    for (const length of [6, 8] as const) {
      const bytes = Buffer.alloc(8);
      bytes.writeBigInt64BE(9_434_765_870n);
      expect(identifiers(hunt.inBytes("bytes", around(bytes.subarray(8 - length))))).toEqual(["943 476 5870"]);
    }
    expect(identifiers(hunt.inBytes("bytes", around(Buffer.from(new Float64Array([9_434_765_870]).buffer).reverse())))).toEqual([
      "943 476 5870",
    ]);
  });
});

describe("what is there by chance is not found", () => {
  test.each(["81999-03-091", "39434765870", "943476587012", "Myods", "yods1", "19/3/1999", "9/3/19991", "19990309123", "QX778", "zed son"])(
    "%s",
    (text) => {
      expect(hunt.inText("text", text)).toEqual([]);
    },
  );
  test("eight million bytes of noise, and pseudonyms by the hundred thousand, hold none", () => {
    let state = 12_345;
    const next = () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      return state >>> 24;
    };
    expect(hunt.inBytes("noise", Buffer.from(Uint8Array.from({ length: 8_000_000 }, next)))).toEqual([]);
    const letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    expect(hunt.inText("pseudonyms", Array.from({ length: 2_600_000 }, () => letters[next() & 31]).join(""))).toEqual([]);
  });
});

describe("what can't be told from chance is refused", () => {
  test.each([
    [{ names: ["Zed"] }],
    [{ names: ["Z. E."] }],
    [{ numbers: ["Q12"] }],
    [{ numbers: ["48213"] }],
    [{ numbers: ["1-2-3-4-5"] }],
    [{}],
  ])("%j", (given) => expect(() => makeHunt(given)).toThrow(RangeError));
});

describe("places", () => {
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "hunt-"));
  });
  afterEach(() => rmSync(folder, { recursive: true }));

  test("a database, its -wal before and after a checkpoint, and what deletion leaves behind", () => {
    const db = new Database(join(folder, "registry.sqlite"));
    db.pragma("journal_mode = WAL");
    db.pragma("wal_autocheckpoint = 0");
    db.exec("create table person (note text, number integer)");
    expect(hunt.inFolder(folder)).toEqual([]);
    db.prepare("insert into person values (?, ?)").run("about Zedson", 9_434_765_870);
    const files = readdirSync(folder).sort();
    expect(files).toEqual(["registry.sqlite", "registry.sqlite-shm", "registry.sqlite-wal"]);
    const before = hunt.inFolder(folder);
    expect(identifiers(before).sort()).toEqual(["943 476 5870", "Zedson"]);
    expect(before.every(({ place }) => place.endsWith("-wal"))).toBe(true);
    db.pragma("wal_checkpoint(TRUNCATE)");
    expect(hunt.inFolder(folder).every(({ place }) => place.endsWith(".sqlite"))).toBe(true);
    db.pragma("secure_delete = OFF");
    db.exec("delete from person");
    db.pragma("wal_checkpoint(TRUNCATE)");
    expect(identifiers(hunt.inFolder(folder))).toContain("Zedson");
    db.close();
  });

  test("a small number in a cell of a database, as whole number and as double; its bytes alone are chance", () => {
    const small = makeHunt({ numbers: ["0491822"] });
    const db = new Database(join(folder, "registry.sqlite"));
    db.exec("create table a (b integer); create table c (d real)");
    db.prepare("insert into a values (?)").run(491_821);
    expect(small.inFolder(folder)).toEqual([]);
    db.prepare("insert into a values (?)").run(491_822);
    expect(identifiers(small.inFolder(folder))).toEqual(["0491822"]);
    db.exec("delete from a; insert into c values (491822.0)");
    expect(identifiers(small.inFolder(folder))).toContain("0491822");
    db.close();
    expect(small.inBytes("bytes", around(Buffer.from([0, 7, 0x81, 0x2e])))).toEqual([]);
  });

  test("a log, a file's name, and a database in UTF-16", () => {
    writeFileSync(join(folder, "server.log"), "GET /intake?file=Zedson%20list 200");
    writeFileSync(join(folder, "yods.txt"), "");
    const db = new Database(join(folder, "utf16.sqlite"));
    db.pragma("encoding = 'UTF-16le'");
    db.exec("create table a (b text); insert into a values ('born 09.03.1999')");
    db.close();
    const traces = hunt.inFolder(folder);
    expect([...new Set(traces.map(({ place, of }) => `${place.replace(folder, "")}: ${of}`))].sort()).toEqual([
      "/server.log: Zedson",
      "/utf16.sqlite: 1999-3-9",
      "name of /yods.txt: Yods",
    ]);
  });

  test("a request's address, headers and body", () => {
    const clean = {
      url: "http://127.0.0.1/intake",
      method: "POST",
      headers: { "content-type": "application/x-ndjson" },
      body: '{"end":0}',
    };
    expect(hunt.inRequests([clean])).toEqual([]);
    const traces = hunt.inRequests([
      clean,
      { ...clean, url: "http://127.0.0.1/intake?q=%C3%96ztest%2C%20Zelda" },
      { ...clean, headers: { "x-file": "zedson.csv" } },
      { ...clean, body: '{"table":"person","row":{"born":"1999-03-09"}}' },
      { ...clean, body: gzipSync("9434765870") },
    ]);
    expect(traces.map(({ place, of }) => `${place}: ${of}`)).toEqual([
      "request 2, head: Öztest, Zelda",
      "request 3, head: Zedson",
      "request 4, body: 1999-3-9",
      "request 5, body, unpacked: 943 476 5870",
    ]);
  });
});

// 300 persons with a name, a number and three dates each, as a demo registry has, over 5 MB: within the runner's limit
test("a whole registry's identifiers are hunted in one pass", () => {
  const people = Array.from({ length: 300 }, (_, at) => at);
  const whole = makeHunt({
    names: people.map((at) => `Zedson${at}, Yodel${at}`),
    numbers: people.map((at) => String(9_990_000_000 + at * 7)),
    dates: people.flatMap((at) => [1, 2, 3].map((n) => ({ year: 1990 + n * 10, month: 1 + (at % 12), day: 1 + Math.floor(at / 12) }))),
  });
  expect(whole.needles).toBeGreaterThan(100_000);
  const bytes = Buffer.alloc(5_000_000, "registry 20210001 ");
  bytes.write("yodel299 zedson299", 4_000_000);
  expect(identifiers(whole.inBytes("big", bytes))).toEqual(["Zedson299, Yodel299"]);
});
