import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { answered, cleanTwin, plantedInRawFiles, type RawFile, rawFiles } from "../../raw-files";
import { makeHunt } from "../identifier-hunt";
import { inRegistry } from "../in-registry";
import { lengthbook, type Ran } from "./run";

type Named = { readonly code: string; readonly row: number | null; readonly column: string | null };

const home = mkdtempSync(path.join(tmpdir(), "lengthbook-every-file-"));
const secret = "demo-data/passphrase.txt";
const hunt = makeHunt(plantedInRawFiles());
const at = (name: string) => path.join(home, name);
afterAll(() => rmSync(home, { recursive: true }));

function bring(data: string, file: string, raw: RawFile, ...more: string[]): Ran {
  const mapping = at(`${raw}.mapping.json`);
  writeFileSync(mapping, JSON.stringify(answered[raw]));
  return lengthbook(data, "intake", file, "--mapping", mapping, "--passphrase-file", secret, ...more);
}

describe("the clean files in either order", () => {
  const hashes = new Map<string, string>();
  const unitKey = at("key");

  beforeAll(async () => {
    lengthbook(unitKey, "settings", "--set", "demo-data/settings.json");
    bring(unitKey, "demo-data/raw-scores.clean.csv", "raw-scores.csv");
    const key = await inRegistry(unitKey, (registry) => registry.unitKey());
    for (const [name, files] of [["children first", rawFiles] as const, ["segments first", rawFiles.toReversed()] as const]) {
      const data = at(name);
      // pseudonyms are the key's: both registries are given the same
      await inRegistry(data, (registry) => (key ? registry.saveUnitKey(key) : Promise.reject(new Error("no key was made"))));
      lengthbook(data, "settings", "--set", "demo-data/settings.json");
      for (const file of files) {
        const { code, err } = bring(data, `demo-data/${cleanTwin(file)}`, file, "--json");
        if (code !== 0) throw new Error(err);
      }
      const batches = lengthbook(data, "batches", "--json").json as { contentHash: string }[];
      hashes.set(name, batches.at(-1)?.contentHash ?? "none");
    }
  }, 240_000);

  test("give the same content hash: visits may come before their segments", () => {
    expect(hashes.get("children first")).toMatch(/^[0-9a-f]{64}$/);
    expect(hashes.get("children first")).toBe(hashes.get("segments first"));
  });

  test("and none waits any more", async () => {
    for (const name of hashes.keys()) {
      const waiting = await inRegistry(at(name), (registry) => registry.waiting());
      expect(Object.values(waiting).every((n) => n === 0)).toBe(true);
    }
  });
});

describe("no name, number or date of a raw file", () => {
  const data = at("hunted");
  const printed: { readonly place: string; readonly text: string }[] = [];
  const run = (place: string, ran: Ran) => {
    printed.push({ place: `${place}, stdout`, text: ran.out }, { place: `${place}, stderr`, text: ran.err });
    return ran;
  };
  const waited: number[] = [];
  const named: string[] = [];

  beforeAll(async () => {
    run("settings", lengthbook(data, "settings", "--set", "demo-data/settings.json"));
    for (const file of rawFiles) {
      // as it came, before a person answered anything but the order of dates: faults and questions all stand in the answer
      const asCame = file === "raw-one-sheet.csv" ? ["--mapping", "demo-data/raw-one-sheet.mapping.json"] : [];
      const words = ["intake", `demo-data/${file}`, ...asCame, "--passphrase-file", secret, "--check-only", "--json"];
      const { findings } = run(`${file}, checked`, lengthbook(data, ...words)).json as { findings: Named[] };
      named.push(...findings.map(({ code, row, column }) => `${file} ${code} ${row} ${column}`));
      const more = ["--save-mapping", at(`${file}.kept.json`), "--refused", at(`${file}.refused.csv`)];
      const { code, err } = run(file, bring(data, `demo-data/${file}`, file, ...more));
      if (code !== 0) throw new Error(err);
      waited.push(await inRegistry(data, async (registry) => (await registry.waiting()).visits));
    }
    // a header that is known as a name only from the file's own column of names
    const [head = "", ...rows] = readFileSync("demo-data/raw-events.csv", "utf8").trim().split("\n");
    const headed = at("named.csv");
    writeFileSync(headed, `${[`${head},Zeldingdell seen`, ...rows.map((row) => `${row},yes`)].join("\n")}\n`);
    run("a header of a name", bring(data, headed, "raw-events.csv", "--json", "--save-mapping", at("named.kept.json")));
    const [case1] = (lengthbook(data, "casebook", "--json").json as { rows: { case: number; segment: number }[] }).rows;
    const words = [String(case1?.case), "segment", String(case1?.segment), "gainMm"];
    run("a correction mistyped", lengthbook(data, "correct", ...words, "Quornaruthe"));
    run("a correction", lengthbook(data, "correct", ...words, "41", "--reason", "source-checked"));
    const two = at("two.txt");
    writeFileSync(two, "0187740\n0545665\n");
    run("a join", lengthbook(data, "join", "--numbers-file", two, "--passphrase-file", secret));
    const nobody = at("nobody.txt");
    writeFileSync(nobody, "0187740\n07700900789\n");
    run("a join that can't be", lengthbook(data, "join", "--numbers-file", nobody, "--passphrase-file", secret));
    for (const command of ["casebook", "batches", "completeness"]) run(command, lengthbook(data, command, "--json"));
  }, 240_000);

  test("is printed though each of the forty faults is named, with its row and column", () => {
    const faults = JSON.parse(readFileSync("demo-data/raw.key.json", "utf8")) as (Named & { file: string })[];
    expect(faults).toHaveLength(40);
    const lines = faults.map(({ file, code, row, column }) =>
      // a header that names a person is told by its place
      code === "identifier-in-header" ? `${file} ${code} null column 14` : `${file} ${code} ${row} ${column}`,
    );
    expect(lines.filter((line) => !named.includes(line))).toEqual([]);
  });

  test("is printed, on stdout or stderr", () => {
    expect(hunt.needles).toBeGreaterThan(10_000);
    expect(printed.length).toBe(2 * (1 + 2 * rawFiles.length + 1 + 4 + 3));
    expect(printed.flatMap(({ place, text }) => hunt.inText(place, text))).toEqual([]);
  });

  test("lies in the registry's folder: database, log of writes, mappings kept for the next file", () => {
    const mappings = lengthbook(data, "batches", "--json").json as object[];
    expect(mappings.length).toBeGreaterThan(rawFiles.length);
    expect(hunt.inFolder(data)).toEqual([]);
  });

  test("is in a mapping saved beside the files", () => {
    for (const file of [...rawFiles, "named"]) expect(hunt.inText(file, readFileSync(at(`${file}.kept.json`), "utf8"))).toEqual([]);
  });

  test("and the hunt would find one: the file of rows set aside holds what the sheet does, readable by its owner alone", () => {
    expect(hunt.inText("refused", readFileSync(at("raw-one-sheet.csv.refused.csv"), "utf8")).length).toBeGreaterThan(5);
    writeFileSync(path.join(data, "planted.log"), "asked for Quornaruthe");
    expect(hunt.inFolder(data).map(({ of }) => of)).toEqual(["Quornaruthe"]);
  });

  test("rows that came before their segments are told as waiting, until the sheet of segments comes", () => {
    expect(waited[0]).toBe(1334);
    expect(waited.at(-1)).toBeLessThan(waited[0] ?? 0);
  });
});
