import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { labelOfCode } from "@/lib/codebook";
import { clerkQuestions, sheet } from "../docs/clerk-questions";
import { inRegistry } from "../integration/in-registry";
import { answered } from "../raw-files";
import { axeFaults, oneBrowser, overhang, shoot } from "./browser";
import { type OwnRegistry, ownRegistry } from "./intake/own-registry";
import { demoPassphrase, passphrase, workedThrough } from "./intake/walk";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
const secret = "demo-data/passphrase.txt";
let folder: string;
let mapping: string;
let own: OwnRegistry;
let page: Page;
/** Things that a person did since Today. */
let steps: number;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "lengthbook-clerk-"));
  mapping = path.join(folder, "answers.json");
  writeFileSync(mapping, JSON.stringify(answered["raw-one-sheet.csv"]));
  const other = path.join(folder, "other");
  await lengthbook(other, ["intake", "demo-data/year-2023.csv", "--passphrase-file", secret, "--json"]);
  own = await ownRegistry(await inRegistry(other, (registry) => registry.unitKey()));
  // last month's sheet: the one that is brought below, before its faults
  await lengthbook(own.data, ["intake", "demo-data/raw-one-sheet.clean.csv", "--mapping", mapping, "--passphrase-file", secret, "--json"]);
  page = await open({ viewport: { width: 1280, height: 900 } });
}, 120_000);
afterAll(async () => {
  await page.context().close();
  await own.stop();
  rmSync(folder, { recursive: true });
});

async function fromToday(link: string, address = own.address): Promise<void> {
  await page.goto("about:blank");
  await page.goto(address);
  await page.getByRole("main").getByRole("link", { name: link, exact: true }).click();
  await page.waitForLoadState("networkidle");
  steps = 1;
}

async function dropSheet(): Promise<void> {
  await page.locator("#files").setInputFiles([sheet, mapping]);
  await page.getByLabel("Passphrase of the unit’s key").waitFor();
  steps++;
}

async function openKey(secretWords = demoPassphrase): Promise<void> {
  await page.getByLabel("Passphrase of the unit’s key").fill(secretWords);
  await page.getByRole("button", { name: "Open the key" }).click();
  steps++;
}

/** The part of the letter to which the link of Today leads, once the sheet is worked through. */
async function partOpened(): Promise<string> {
  await workedThrough(page);
  await page.locator(".part.is-open .go-on").waitFor();
  return plain(await page.locator(".part.is-open").innerText());
}

const plain = (text: string) => text.replaceAll("\u00a0", " ").replaceAll(/\s+/g, " ");
const counted = (id: string) => {
  const { walk } = clerkQuestions.find((one) => one.id === id) ?? { walk: [] };
  expect(steps).toBe(walk.length);
  expect(steps).toBeLessThanOrEqual(4);
};

type Finding = {
  readonly code: string;
  readonly severity: string;
  readonly row: number | null;
  readonly column: string | null;
  readonly found: string;
  readonly mend: string;
};
type Intake = {
  readonly refused: number;
  readonly findings: readonly Finding[];
  readonly columns: readonly { readonly header: string; readonly why: string; readonly holds: readonly string[] }[];
  readonly comments: readonly { readonly row: number }[];
  readonly changes: readonly {
    readonly row: number;
    readonly table: string;
    readonly field: string;
    readonly from: unknown;
    readonly to: unknown;
    readonly days: string | null;
  }[];
  readonly fresh: { readonly persons: number; readonly segments: number };
  readonly absent: { readonly segments: number };
  readonly absentSegments: readonly { readonly bone: string; readonly side: string; readonly surgeryYear: number }[];
};
const checked = async (): Promise<Intake> =>
  JSON.parse(await lengthbook(own.data, ["intake", sheet, "--mapping", mapping, "--passphrase-file", secret, "--check-only", "--json"]));

describe("of a dirty sheet, before any of it is kept", () => {
  let byCommandLine: Intake;
  beforeAll(async () => {
    byCommandLine = await checked();
  });

  test("C1: each row refused, why, and what mends it", async () => {
    await fromToday("which rows stay out, and what mends each");
    await dropSheet();
    await openKey();
    await page.locator(".part.is-open .finding .mend").first().waitFor();
    const text = await partOpened();
    counted("C1");
    const errors = byCommandLine.findings.filter(({ severity }) => severity === "error");
    expect(new Set(errors.map(({ row }) => row)).size).toBe(byCommandLine.refused);
    expect(byCommandLine.refused).toBe(9);
    for (const { row, column, found, mend } of errors) {
      expect(text).toContain(plain(`(row ${row}${column === null ? "" : `, ${column}`}): found ${found};`));
      expect(text).toContain(plain(mend));
    }
    await shoot(page, "clerk-c1-wide");
    expect(await axeFaults(page)).toEqual([]);
  });

  test("C2: each column that isn’t kept, why, and what it was seen to hold; comments among them", async () => {
    await fromToday("which columns are left out");
    await dropSheet();
    await openKey();
    const text = await partOpened();
    counted("C2");
    expect(byCommandLine.columns.length).toBeGreaterThan(5);
    for (const { header, holds } of byCommandLine.columns) {
      expect(text).toContain(plain(header));
      if (holds.length > 0) expect(text).toContain(`its cells hold: ${holds.map((kind) => kind.replaceAll("-", " ")).join(", ")}`);
    }
    expect(byCommandLine.columns.flatMap(({ holds }) => holds)).toContain("email");
    expect(text).toContain("code what it says first");
  });

  test("C3: where else a person is named, in a cell, a header or the file’s name", async () => {
    await fromToday("whether a person is named in it");
    await dropSheet();
    await openKey();
    const text = await partOpened();
    counted("C3");
    const named = byCommandLine.findings.filter(({ code }) => code.startsWith("identifier-"));
    expect(named.length).toBeGreaterThan(0);
    await page.locator("#persons-seen").waitFor();
    for (const { row, column } of named)
      expect(text).toContain(plain(`(${[row === null ? null : `row ${row}`, column].filter(Boolean).join(", ")})`));
    await shoot(page, "clerk-c3-wide");
  });

  test("C3: a file’s own name that names a person is told, and goes nowhere", async () => {
    const named = path.join(folder, "Mrs Quornaruthe 0187740.csv");
    writeFileSync(named, readFileSync(sheet));
    await fromToday("whether a person is named in it");
    await page.locator("#files").setInputFiles([named, mapping]);
    await openKey();
    await page.locator(".part.is-open .finding", { hasText: "found the file’s name" }).waitFor();
    expect(await partOpened()).toContain("Identifier suspected: found the file’s name;");
  });

  test("C4: what is new, what changed field by field, what is gone", async () => {
    await fromToday("what is new, changed or gone since the last one");
    await dropSheet();
    await openKey();
    const text = await partOpened();
    counted("C4");
    const fields = new Map<string, number>();
    for (const { table, field } of byCommandLine.changes) fields.set(`${table} ${field}`, (fields.get(`${table} ${field}`) ?? 0) + 1);
    expect(fields.size).toBeGreaterThan(0);
    expect(await page.locator(".part.is-open details", { hasText: "field by field" }).locator("li").count()).toBe(fields.size);
    for (const { row, from, to, days } of byCommandLine.changes)
      if (typeof from === "number")
        expect(text).toContain(days === null ? `row ${row}, ${from} → ${to}` : `row ${row}, day ${from} → day ${to}`);
    const rows = await page.locator(".part.is-open table.data tbody tr").allInnerTexts();
    const segments = rows
      .find((row) => row.startsWith("segments"))
      ?.split(/\s+/)
      .slice(1);
    expect(segments?.[0]).toBe(String(byCommandLine.fresh.segments));
    expect(segments?.at(-1)).toBe(String(byCommandLine.absent.segments));
    expect(byCommandLine.absent.segments).toBeGreaterThan(0);
    for (const { bone, side, surgeryYear } of byCommandLine.absentSegments)
      expect(text).toContain(`${labelOfCode(bone)}, ${side}, operated on in ${surgeryYear}`);
    await shoot(page, "clerk-c4-wide");
    expect(await axeFaults(page)).toEqual([]);
  });

  test("C8: each comment that isn’t coded, by its row", async () => {
    await fromToday("which comments aren’t coded");
    await dropSheet();
    await openKey();
    await page.getByRole("list", { name: "Not coded yet" }).waitFor();
    counted("C8");
    const rows = await page.getByRole("list", { name: "Not coded yet" }).getByRole("button").allInnerTexts();
    expect(byCommandLine.comments.length).toBeGreaterThan(10);
    expect(rows).toEqual(byCommandLine.comments.slice(0, 60).map(({ row }) => `row ${row}`));
    await shoot(page, "clerk-c8-wide");
    expect(await axeFaults(page)).toEqual([]);
    await page.getByRole("button", { name: rows[1] ?? "", exact: true }).click();
    await page.locator(".desk .paper > p", { hasText: "Comment 2 of" }).waitFor();
  });

  test("C10: the wrong file, kept, is taken back from Today; yesterday’s content is there again, and the list says so to everyone", async () => {
    const yesterday = JSON.parse(await lengthbook(own.data, ["batches", "--json"])).at(-1).contentHash;
    await lengthbook(own.data, ["intake", sheet, "--mapping", mapping, "--passphrase-file", secret, "--json"]);
    await page.goto(own.address);
    steps = 0;
    await page.locator("summary", { hasText: "Take batch 2 back" }).click();
    expect(await page.locator(".batch").first().innerText()).toContain("stands in this list for everyone to see");
    steps++;
    await page.getByRole("button", { name: "Take batch 2 back" }).click();
    await page.getByRole("status").filter({ hasText: "Batch 2 was taken back, as batch 3." }).waitFor();
    steps++;
    counted("C10");
    const batches = JSON.parse(await lengthbook(own.data, ["batches", "--json"]));
    expect(batches.at(-1)).toMatchObject({ kind: "undo", undoes: 2, contentHash: yesterday });
    expect(plain(await page.locator(".batch").first().innerText())).toContain("took batch 2 back");
  });

  test("C7: two numbers are told to be two cases, joined and parted in the tab, and parted at the command line", async () => {
    const before = JSON.parse(await lengthbook(own.data, ["batches", "--json"])).at(-1).contentHash;
    const [a = "", b = ""] = numbersOfMen();
    const lookUp = async (said: string) => {
      await fromToday("whose a number is, and whether two are one patient’s");
      await openKey();
      await page.getByLabel("Local numbers, a line each").fill(`${a}\n${b}`);
      await page.getByRole("button", { name: "Look them up" }).click();
      await page.getByText(said).waitFor();
      steps++;
    };
    await lookUp("Are these two one patient?");
    await page
      .getByRole("button", { name: /^Join case/ })
      .first()
      .click();
    await page.getByRole("status").filter({ hasText: "read as one patient from now on" }).waitFor();
    steps++;
    counted("C7");
    const [, kept] = /\/casebook\/(\d+)/.exec(page.url()) ?? [];
    const held = JSON.parse(await lengthbook(own.data, ["casebook", String(kept), "--json"])) as { joined: { case: number }[] };
    expect(held.joined).toHaveLength(1);
    const second = /what was case (\d+)/i.exec(await page.locator("main").innerText())?.[1];
    await lengthbook(own.data, ["part", String(second)]);
    const contentHash = async () => JSON.parse(await lengthbook(own.data, ["batches", "--json"])).at(-1).contentHash;
    expect(await contentHash()).toBe(before);

    // the way back, by the page
    await lookUp("Are these two one patient?");
    await page
      .getByRole("button", { name: /^Join case/ })
      .last()
      .click();
    await page.getByRole("status").filter({ hasText: "read as one patient from now on" }).waitFor();
    await lookUp("These two are one patient");
    await page.getByRole("button", { name: /^Part case \d+ from case \d+$/ }).click();
    await page.waitForURL(/\?parted=\d+$/);
    steps++;
    counted("C7");
    expect(await contentHash()).toBe(before);
  });
});

/** Two patients of the raw sheet whom it gives as men. */
function numbersOfMen(): readonly string[] {
  const lines = readFileSync("demo-data/raw-one-sheet.clean.csv", "latin1").split(/\r?\n/);
  const at = lines.findIndex((line) => line.includes("Hosp No"));
  const heads = lines[at]?.split(";") ?? [];
  const [number, sex] = [heads.indexOf("Hosp No"), heads.indexOf("Sex")];
  const men = lines.slice(at + 1).flatMap((line) => (/^m/i.test(line.split(";")[sex] ?? "") ? [line.split(";")[number] ?? ""] : []));
  return [...new Set(men)].slice(0, 2);
}

describe("of what is held", () => {
  const held = () => inject("filled");
  type Book = { readonly segments: number; readonly rows: readonly Record<string, unknown>[] };
  const book = async (...words: string[]): Promise<Book> => JSON.parse(await lengthbook(held().data, ["casebook", ...words, "--json"]));

  test("C5: no consolidation day though 12 months are past, with the last film of each", async () => {
    await fromToday("no consolidation day though 12 months are past", held().address);
    counted("C5");
    const answer = await book("--list", "not-healed-at-12-months");
    expect(answer.segments).toBeGreaterThan(5);
    const rows = await page.locator(".book tbody tr").allInnerTexts();
    expect(rows.length).toBe(Math.min(100, answer.segments));
    const heads = await page.locator(".book thead th").allInnerTexts();
    const film = heads.findIndex((head) => head.startsWith("Last film held"));
    expect(film).toBeGreaterThan(0);
    const films = await page.locator(`.book tbody tr > :nth-child(${film + 1})`).allInnerTexts();
    expect(films).toEqual(answer.rows.slice(0, 100).map(({ lastFilm }) => (lastFilm === null ? "–" : String(lastFilm))));
  });

  test("C6: whose 6-month films are missing, by the unit’s own list, in the tab alone", async () => {
    const sent: string[] = [];
    page.on("request", (request) => sent.push(`${request.method()} ${request.url()} ${request.postData() ?? ""}`));
    await fromToday("6", held().address);
    await page.getByText("Whose is this?").click();
    steps++;
    await openKey(passphrase);
    await page.locator(".whose-part input[type=file]").waitFor();
    const list = path.join(folder, "list.csv");
    const numbers = [
      ...new Set(
        readFileSync("demo-data/seven-years.csv", "utf8")
          .trim()
          .split("\n")
          .slice(1)
          .map((line) => line.split(",")[0] ?? ""),
      ),
    ];
    writeFileSync(list, `Hospital number;Name\n${numbers.map((number) => `${number};Invented Person`).join("\n")}\n`);
    await page.locator(".whose-part input[type=file]").setInputFiles(list);
    await page.locator(".matches").first().waitFor();
    steps++;
    counted("C6");
    const answer = await book("--list", "film-missing-6-months", "--columns", "film-6-months");
    const cases = [...new Set(answer.rows.map((row) => row.case as number))];
    expect(cases.length).toBeGreaterThan(5);
    const told = await page.locator(".matches").first().locator("a").allInnerTexts();
    expect(told.map((words) => Number(words.replace("case ", ""))).sort((a, b) => a - b)).toEqual(cases.sort((a, b) => a - b));
    for (const number of numbers) expect(sent.join("\n")).not.toContain(number);
  });

  test("C8: segments that stand as events not collected, one step from Today", async () => {
    await page.goto(held().address);
    await page.locator(".work li", { hasText: "events not collected" }).getByRole("link", { name: "Show them" }).click();
    await page.waitForURL(/list=events-not-collected/);
    const answer = await book("--list", "events-not-collected");
    expect(answer.segments).toBeGreaterThan(5);
    expect(await page.locator(".answer").innerText()).toContain(`${answer.segments} segments`);
  });

  test("C9: how complete motion, alignment and scores are before surgery, this audit year beside the last", async () => {
    await fromToday("how complete the records are, year by year", held().address);
    counted("C9");
    const answer = JSON.parse(await lengthbook(held().data, ["completeness", "--json"])) as {
      years: number[];
      segments: number[];
      items: { label: string; recorded: number[] }[];
    };
    for (const label of ["Knee flexion", "Knee extension", "Mechanical axis deviation", "Any score"]) {
      const item = answer.items.find((one) => one.label === label);
      const cells = await page
        .locator("tr", { has: page.getByRole("rowheader", { name: label, exact: true }) })
        .locator("td")
        .allInnerTexts();
      expect(cells.map((cell) => Number.parseInt(cell, 10))).toEqual(item?.recorded);
    }
    const heads = await page.locator("thead th").allInnerTexts();
    expect(heads.slice(1).map((head) => Number.parseInt(head, 10))).toEqual(answer.years);
    expect(await overhang(page)).toBe(0);
  });
});
