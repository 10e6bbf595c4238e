import type { Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, test } from "vitest";
import { makeUnitKey, sealUnitKey, type UnitKeyRecord } from "@/lib/intake";
import { inRegistry } from "../integration/in-registry";
import { oneBrowser } from "./browser";
import { type OwnRegistry, ownRegistry } from "./intake/own-registry";
import { bring, demoFile, goOn, loadMapping, openKey, openPart, passphrase, textFile, turnTo, workedThrough } from "./intake/walk";

const { open } = oneBrowser();
const recoveryCode = "01234-56789-ABCDE-FGHJK-MNPQR-STVWX";
let registry: OwnRegistry;
let page: Page;

/** A key of this test's own. Its bytes are fixed: nothing is kept under it. */
async function aKey(): Promise<UnitKeyRecord> {
  const random = (length: number) => new Uint8Array(length).map((_, i) => (i * 37 + length) % 256);
  return sealUnitKey(makeUnitKey(random), { passphrase, recoveryCode, random });
}

beforeAll(async () => {
  registry = await ownRegistry(await aKey());
});
afterAll(() => registry.stop());
beforeEach(async () => {
  page = await open({ viewport: { width: 1280, height: 900 } });
  await page.goto(`${registry.address}/intake`);
  return () => page.context().close();
});

async function nothingWritten(): Promise<void> {
  expect(await inRegistry(registry.data, (open) => open.batches())).toEqual([]);
}

const header = "Hosp No;Segment;Side;Date of op;Gain (cm)";
const row = "0187741;Femur;L;04/01/2023;5,0";

describe("a file that can't be taken in says so, and what to do", () => {
  test.each([
    [
      "an empty file",
      textFile("none.csv", ""),
      "Empty file: found 0 bytes; expected a table with headers and rows.",
      "Export the sheet again",
    ],
    [
      "a PDF renamed",
      textFile("sheet.csv", Buffer.concat([Buffer.from("%PDF-1.7\n%âãÏÓ\n"), Buffer.alloc(4000, 7)])),
      "Not a table: found a PDF",
      "choose Save as, .xlsx or CSV",
    ],
    [
      "301 columns",
      textFile("wide.csv", `${Array.from({ length: 301 }, (_, i) => `c${i}`).join(";")}\n${";".repeat(300)}\n`),
      "found 301 columns; expected at most 300 columns.",
      "Delete the columns that hold no case data",
    ],
    [
      "a header only",
      textFile("head.csv", `${header}\n`),
      "found 5 headers and no row; expected at least one row below the headers.",
      "with its rows",
    ],
    [
      "a cell of 10 MB",
      textFile("cell.csv", `${header};Comments\n${row};"${"x".repeat(10 * 1024 * 1024)}"\n`),
      "found a cell of 10485760 characters; expected at most 10 000 characters in a cell.",
      "a quotation mark left open",
    ],
    [
      "an open quote",
      textFile("quote.csv", `${header}\n${row}\n"0187742;Femur;R;04/01/2023;5,0\n`),
      "found a quotation mark without its partner",
      "Close or delete",
    ],
  ])("%s", async (_, file, found, mend) => {
    await bring(page, file);
    await page.getByText("This file can’t be taken in. Nothing of it was used.").waitFor();
    const said = await page.locator(".file .finding").first().innerText();
    expect(said).toContain(found);
    expect(said).toContain(mend);
    expect(await page.getByRole("button", { name: /^Go on/ }).count()).toBe(0);
    await nothingWritten();
  });
});

test("a workbook comes in sheet by sheet, and what is passed over is said", async () => {
  await bring(page, demoFile("raw-workbook.xlsx"));
  await page.locator(".file h3", { hasText: "raw-workbook.xlsx" }).waitFor();
  const said = await page.locator(".file").innerText();
  expect(said).toMatch(/raw-workbook\.xlsx · .+: \d+ rows of \d+ columns; a workbook; headers in row \d+\./);
  await goOn(page);
  await openKey(page);
  await workedThrough(page);
  expect(await openPart(page)).toBe("What we understood");
  expect(await page.locator(".columns > li").count()).toBeGreaterThan(10);
});

test("a refused file beside a good one leaves the good one", async () => {
  await bring(page, textFile("none.csv", ""), textFile("good.csv", `${header}\n${row}\n`));
  expect(await page.locator(".part.is-open .gist").innerText()).toBe("1 file, 1 row; 1 file refused");
  await goOn(page);
  expect(await openPart(page)).toBe("The key");
});

test("a wrong passphrase is told before any row is worked on", async () => {
  await bring(page, demoFile("raw-one-sheet.csv"));
  await goOn(page);
  await openKey(page, "not the unit's passphrase");
  const alert = page.getByRole("alert").filter({ hasText: "does not open" });
  await alert.waitFor();
  expect(await alert.innerText()).toBe(
    "This passphrase does not open the registry’s key. No row was worked on and nothing was sent. Mind capitals and the keyboard’s language.",
  );
  expect(await openPart(page)).toBe("The key");
  expect(await page.getByRole("heading", { name: "What we understood" }).getByRole("link").count()).toBe(0);
  await nothingWritten();
  await openKey(page);
  await workedThrough(page);
  expect(await openPart(page)).toBe("What we understood");
});

test("the recovery code opens the key too, however it is typed, and a wrong one doesn't", async () => {
  await bring(page, demoFile("raw-one-sheet.csv"));
  await goOn(page);
  await page.getByRole("button", { name: "Passphrase lost? Use the recovery code" }).click();
  await page.getByLabel("Recovery code").fill("01234-56789-ABCDE-FGHJK-MNPQR-STVWY");
  await page.getByRole("button", { name: "Open the key" }).click();
  await page.getByRole("alert").filter({ hasText: "This code does not open the registry’s key." }).waitFor();
  await page.getByLabel("Recovery code").fill(recoveryCode.toLowerCase().replaceAll("-", " ").replace("0", "o").replace("1", "l"));
  await page.getByRole("button", { name: "Open the key" }).click();
  await page.getByText("The recovery code has opened the key.").waitFor();
});

test("a date order that the file contradicts is asked about again, and no row is read under it", async () => {
  await bring(page, demoFile("raw-one-sheet.csv"));
  await goOn(page);
  await openKey(page);
  await workedThrough(page);
  await loadMapping(page, demoFile("raw-one-sheet.mapping.json"));
  await workedThrough(page);
  await page.getByLabel("Dates").selectOption("month first");
  await workedThrough(page);
  const asked = page.locator(".asked").filter({ hasText: "Which comes first in a date: the day or the month?" });
  expect(await asked.innerText()).toContain("found dates that can’t be mdy. Say whether the day or the month comes first");
  expect(await asked.locator(".cells li").count()).toBe(3);
  expect(await page.getByRole("button", { name: /^Go on/ }).count()).toBe(0);
  expect(await page.getByRole("heading", { name: "What will be kept" }).getByRole("link").count()).toBe(0);
  await asked.getByRole("button", { name: "Day first" }).click();
  await workedThrough(page);
  await turnTo(page, "What needs your word");
  expect(await page.locator(".part.is-open .answer").innerText()).toMatch(/^9 rows of 136 set aside/);
  await nothingWritten();
});

test("dates that could be either are asked about with three of them, and no row is read before the answer", async () => {
  const dates = ["04/01/2023", "05/02/2023", "06/03/2023", "07/04/2023"];
  await bring(page, textFile("either.csv", `${header}\n${dates.map((date, i) => `018774${i};Femur;L;${date};5,0`).join("\n")}\n`));
  await goOn(page);
  await openKey(page);
  await workedThrough(page);
  await page.getByRole("heading", { name: "Which comes first in a date: the day or the month?" }).waitFor();
  expect(await page.locator(".asked .cells li").allInnerTexts()).toEqual(["row 2 04/01/2023", "row 3 05/02/2023", "row 4 06/03/2023"]);
  expect(await page.getByRole("button", { name: /^Go on/ }).count()).toBe(0);
  await page.getByRole("button", { name: "Day first" }).click();
  await workedThrough(page);
  await goOn(page);
  expect(await openPart(page)).toBe("What we leave out");
  await nothingWritten();
});

test("a mapping that is none is refused, and one of ours is applied", async () => {
  await bring(page, demoFile("raw-one-sheet.csv"));
  await goOn(page);
  await openKey(page);
  await workedThrough(page);
  await loadMapping(page, { name: "strange.json", mimeType: "application/json", buffer: Buffer.from('{"columns":{"Hosp No":7}}') });
  await page.getByRole("alert").filter({ hasText: "That file is no mapping that was saved here" }).waitFor();
});

test("a browser without the means says so, and points to the command line", async () => {
  await page.addInitScript("Object.defineProperty(Crypto.prototype, 'subtle', { get: () => undefined })");
  await page.goto(`${registry.address}/intake`);
  await page.getByRole("heading", { name: "No file can be brought in from this address." }).waitFor();
  expect(await page.locator("main code").innerText()).toBe("npm run -s lengthbook -- intake FILE --passphrase-file FILE");
  expect(await page.locator("#files").count()).toBe(0);
});
