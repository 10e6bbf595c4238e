import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type CaughtRequest, makeHunt } from "../integration/identifier-hunt";
import { inRegistry } from "../integration/in-registry";
import { answered, plantedInRawFiles, rawFiles } from "../raw-files";
import { complaintsOf, oneBrowser, shoot } from "./browser";
import { type OwnRegistry, ownRegistry } from "./intake/own-registry";
import { type Recorder, recorderBefore } from "./intake/recorder";
import { bring, demoFile, demoPassphrase, goOn, openKey, turnTo, workedThrough } from "./intake/walk";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
const hunt = makeHunt(plantedInRawFiles());
/** The content hash after each file, and what it brought, by the command line. */
const byCommandLine = new Map<string, { readonly contentHash: string; readonly refused: number }>();
/** Requests caught while a file was looked at, and while it was kept. */
const before: CaughtRequest[] = [];
const kept: CaughtRequest[] = [];

let folder: string;
let registry: OwnRegistry;
let recorder: Recorder;
let page: Page;
let complaints: string[];

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "lengthbook-every-file-"));
  const other = path.join(folder, "by-command-line");
  await lengthbook(other, ["settings", "--set", "demo-data/settings.json"]);
  for (const file of rawFiles) {
    const mapping = path.join(folder, `${file}.json`);
    writeFileSync(mapping, JSON.stringify(answered[file]));
    const words = ["intake", `demo-data/${file}`, "--mapping", mapping, "--passphrase-file", "demo-data/passphrase.txt", "--json"];
    byCommandLine.set(file, JSON.parse(await lengthbook(other, words)));
  }
  registry = await ownRegistry(await inRegistry(other, (one) => one.unitKey()));
  await lengthbook(registry.data, ["settings", "--set", "demo-data/settings.json"]);
  recorder = await recorderBefore(registry.address);
  page = await open({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
  complaints = complaintsOf(page);
  await page.goto(`${recorder.address}/intake`);
}, 240_000);
afterAll(async () => {
  await page.context().close();
  await recorder.stop();
  await registry.stop();
  rmSync(folder, { recursive: true });
});

/** Cells and headers of a raw file of text, as they stand between its delimiters. */
function cellsOf(file: string): readonly string[] {
  const delimiter = file === "raw-one-sheet.csv" ? ";" : ",";
  const lines = readFileSync(demoFile(file), "latin1").split(/\r?\n/);
  return lines.flatMap((line) => line.split(delimiter)).map((cell) => cell.replaceAll('"', "").trim());
}

async function saved(button: RegExp): Promise<string> {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: button }).click()]);
  const to = path.join(folder, download.suggestedFilename());
  await download.saveAs(to);
  return readFileSync(to, "utf8");
}

describe("each raw file goes through the page with the content hash that the command line gives", () => {
  test.each(rawFiles)("%s", async (file) => {
    const from = recorder.caught.length;
    // a file and its mapping are dropped together
    await bring(page, demoFile(file), path.join(folder, `${file}.json`));
    await page.locator(".file").waitFor();
    await goOn(page);
    if (file === rawFiles[0]) await openKey(page, demoPassphrase);
    await workedThrough(page);
    await turnTo(page, "What we leave out");
    await shoot(page, `every-file-left-out-${file}`);
    await turnTo(page, "What needs your word");
    const { contentHash, refused } = byCommandLine.get(file) ?? { contentHash: "none", refused: Number.NaN };
    expect(refused).toBeGreaterThan(0);
    // made in the tab: it holds what the sheet does, and nothing of it goes up
    const aside = await saved(/^Save the \d+ rows? set aside/);
    expect(hunt.inText("rows set aside", aside).length).toBeGreaterThan(0);
    await turnTo(page, "What we understood");
    expect(hunt.inText("mapping", await saved(/^Save the mapping/))).toEqual([]);
    await turnTo(page, "What will be kept");
    before.push(...recorder.caught.slice(from));
    const at = recorder.caught.length;
    await page.getByRole("button", { name: /^Keep \d+ rows$/ }).click();
    await page.getByText(/^Kept, as batch \d+:/).waitFor();
    kept.push(...recorder.caught.slice(at));
    expect((await inRegistry(registry.data, (one) => one.batches())).at(-1)?.contentHash).toBe(contentHash);
    if (file === rawFiles[0]) await page.getByText(/1334 visits wait for the sheet that holds their segment or patient/).waitFor();
    await shoot(page, `every-file-receipt-${file}`);
    await page.getByRole("button", { name: "Bring another file" }).click();
  });
});

test("a list dropped on the casebook, a workbook, is matched in the tab, and so are two numbers typed; a field is corrected by hand", async () => {
  await page.goto(`${recorder.address}/casebook?list=film-missing-6-months`);
  await page.waitForLoadState("networkidle");
  const from = recorder.caught.length;
  await page.getByText("Whose is this?").click();
  await page.getByLabel("Passphrase of the unit’s key").fill(demoPassphrase);
  await page.getByRole("button", { name: "Open the key" }).click();
  await page.locator(".whose-part input[type=file]").setInputFiles(demoFile("raw-workbook.xlsx"));
  await page.locator(".whose-part [role=status]").filter({ hasText: "(the column of local numbers)" }).waitFor();
  const found = await page.locator(".whose-part [role=status] > p").first().innerText();
  const numbers = JSON.parse(readFileSync(demoFile("planted-identifiers.json"), "utf8")).identifiers as { kind: string; as: string[] }[];
  expect(found).toMatch(/^Of \d\d numbers \(the column of local numbers\), \d\d are held, as \d\d cases; \d+ on the list in view\.$/);
  // the tab shows the clerk whose each is: the hunt finds them there, and nowhere else
  expect(hunt.inText("the tab", await page.locator(".matches").allInnerTexts().then(String)).length).toBeGreaterThan(10);
  await shoot(page, "whose-workbook-wide");
  const [a = "", b = ""] = numbers.filter(({ kind }) => kind === "hospital-number").map(({ as }) => as[0] ?? "");
  await page.getByLabel("Local numbers, a line each").fill(`${a}\n${b}`);
  await page.getByRole("button", { name: "Look them up" }).click();
  await page.getByText("Are these two one patient?").waitFor();
  const { rows } = JSON.parse(await lengthbook(registry.data, ["casebook", "--columns", "gainMm", "--json"]));
  const one = (rows as { case: number; segment: number; gainMm: number | null }[]).find(({ gainMm }) => gainMm !== null);
  await page.goto(`${recorder.address}/casebook/${one?.case}?correct=segment-${one?.segment}-gainMm`);
  await page.getByLabel("It should be").fill(String((one?.gainMm ?? 0) + 1));
  await page.getByLabel("because of").selectOption("source-checked");
  await page.getByRole("button", { name: "Correct it" }).click();
  await page.getByRole("status").filter({ hasText: "The field was corrected" }).waitFor();
  kept.push(...recorder.caught.slice(from));
});

test("before a file is kept only questions without a body go up, and never a cell, header or file name", () => {
  expect(before.length).toBeGreaterThan(10);
  expect(before.filter(({ method, body }) => method !== "GET" || (body?.length ?? 0) > 0)).toEqual([]);
  const heads = before.map(({ url, headers }) => `${decodeURIComponent(url)}\n${Object.values(headers ?? {}).join("\n")}`).join("\n");
  for (const file of rawFiles) expect(heads).not.toContain(file.replace(/\..*$/, ""));
  const cells = new Set(rawFiles.filter((file) => file.endsWith(".csv")).flatMap(cellsOf));
  // a shorter number stands by chance in a browser's version
  const long = [...cells].filter((cell) => cell.length >= 6);
  expect(long.length).toBeGreaterThan(1500);
  expect(long.filter((cell) => heads.includes(cell))).toEqual([]);
});

test("nothing that goes up, at any time, holds a planted identifier; nor does the folder, the server’s log or what the browser keeps", async () => {
  expect(kept.filter(({ method }) => method === "POST").length).toBe(rawFiles.length + 1);
  expect(hunt.inRequests(recorder.caught)).toEqual([]);
  expect(hunt.inFolder(registry.data)).toEqual([]);
  expect(hunt.inText("the server’s log", registry.log())).toEqual([]);
  const state = await page.evaluate(
    "(async () => JSON.stringify([{ ...localStorage }, { ...sessionStorage }, document.cookie, await indexedDB.databases(), await caches.keys(), history.state, location.href]))()",
  );
  expect(String(state)).toContain("lengthbook/intake/mapping");
  expect(hunt.inText("what the browser keeps", String(state))).toEqual([]);
});

test("and each hunt would find one", async () => {
  const from = recorder.caught.length;
  await page.evaluate("fetch('/intake/key?of=Quornaruthe')");
  await expect.poll(() => recorder.caught.length).toBeGreaterThan(from);
  expect(hunt.inRequests(recorder.caught.slice(from)).map(({ of }) => of)).toContain("Quornaruthe");
  writeFileSync(path.join(registry.data, "planted"), "0187740");
  expect(hunt.inFolder(registry.data).map(({ of }) => of)).toEqual(["0187740"]);
  expect(hunt.inText("the server’s log", `${registry.log()} GET /intake?of=Quornaruthe`).length).toBe(1);
});

test("the page complained of nothing on the way", () => {
  // the request by which the hunt was tried was refused, as it should be
  expect(complaints.filter((complaint) => !/400|404|ERR_ABORTED/.test(complaint))).toEqual([]);
});
