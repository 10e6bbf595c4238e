import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { type Hunt, makeHunt } from "../integration/identifier-hunt";
import { inRegistry } from "../integration/in-registry";
import { answered, plantedInRawFiles } from "../raw-files";
import { complaintsOf, oneBrowser } from "./browser";
import { type OwnRegistry, ownRegistry } from "./intake/own-registry";
import { type Recorder, recorderBefore } from "./intake/recorder";
import { bring, demoFile, goOn, loadMapping, openKey, passphrase, turnTo, workedThrough } from "./intake/walk";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
let folder: string;
let mapping: string;
let byCommandLine: { contentHash: string; committed: Record<string, number> };
let registry: OwnRegistry;
let recorder: Recorder;
let hunt: Hunt;
let page: Page;
let complaints: string[];
/** How many requests had gone up when *Keep* was pressed. */
let beforeCommit: number;

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), "lengthbook-walk-"));
  mapping = path.join(folder, "raw.mapping.json");
  writeFileSync(mapping, JSON.stringify(answered["raw-one-sheet.csv"]));
  const secret = path.join(folder, "passphrase.txt");
  writeFileSync(secret, `${passphrase}\n`);
  const other = path.join(folder, "by-command-line");
  const words = ["intake", "demo-data/raw-one-sheet.csv", "--mapping", mapping, "--passphrase-file", secret, "--json"];
  const answer = JSON.parse(await lengthbook(other, words));
  const [batch] = JSON.parse(await lengthbook(other, ["batches", "--json"]));
  byCommandLine = { contentHash: batch.contentHash, committed: answer.committed };
  // pseudonyms are the key's: the browser is given the same sealed key, and a registry without a case
  registry = await ownRegistry(await inRegistry(other, (open) => open.unitKey()));
  recorder = await recorderBefore(registry.address);
  hunt = makeHunt(plantedInRawFiles());
  page = await open({ viewport: { width: 1280, height: 900 } });
  complaints = complaintsOf(page);
});
afterAll(async () => {
  await page.context().close();
  await recorder.stop();
  await registry.stop();
  rmSync(folder, { recursive: true });
});

/** Every different cell and header of the raw file that is long enough to be told from chance. */
function cellsOfRawFile(): readonly string[] {
  const text = new TextDecoder("windows-1252").decode(readFileSync(demoFile("raw-one-sheet.csv")));
  return [...new Set(text.split(/[;\r\n]+/).map((cell) => cell.replaceAll('"', "").trim()))].filter((cell) => cell.length >= 5);
}

test("the raw file goes through the page into an empty registry, with the content hash that the command line gives", async () => {
  await page.goto(`${recorder.address}/intake`);
  await bring(page, demoFile("raw-one-sheet.csv"));
  await goOn(page);
  await openKey(page);
  await workedThrough(page);
  await loadMapping(page, mapping);
  await workedThrough(page);
  await turnTo(page, "What we leave out");
  await goOn(page);
  expect(await page.locator(".part.is-open .answer").innerText()).toMatch(/^9 rows of 136 set aside until mended; no question is open; /);
  await goOn(page);
  beforeCommit = recorder.caught.length;
  await page.getByRole("button", { name: /^Keep \d+ rows$/ }).click();
  await page.getByText("Kept, as batch 1:").waitFor();
  const [batch] = await inRegistry(registry.data, (open) => open.batches());
  expect(batch?.contentHash).toBe(byCommandLine.contentHash);
  expect(await page.locator(".receipt code").innerText()).toBe(byCommandLine.contentHash.slice(0, 12));
  const said = await page.locator(".receipt .answer").innerText();
  expect(said).toContain(`${byCommandLine.committed.segments} segments`);
  expect(said).toContain(`${byCommandLine.committed.persons} patients`);
});

test("before Keep is pressed only questions without a body go up, and no cell, header or file name with them", () => {
  const before = recorder.caught.slice(0, beforeCommit);
  expect(before.length).toBeGreaterThan(5);
  for (const { method, body } of before) {
    expect(method).toBe("GET");
    expect(body?.length).toBe(0);
  }
  const heads = before.map(({ url, headers }) => `${decodeURIComponent(url)}\n${Object.values(headers ?? {}).join("\n")}`).join("\n");
  const cells = cellsOfRawFile();
  expect(cells.length).toBeGreaterThan(800);
  expect(cells.filter((cell) => heads.includes(cell))).toEqual([]);
  expect(heads).not.toContain("raw-one-sheet");
});

test("nothing that goes up, at any time, holds a planted identifier", () => {
  expect(hunt.needles).toBeGreaterThan(10_000);
  expect(hunt.inRequests(recorder.caught)).toEqual([]);
});

test("what is sent at Keep is codes, numbers, pseudonyms and counts, and no header, text or file name", () => {
  const [commit, ...more] = recorder.caught.filter(({ method }) => method === "POST");
  expect(more).toEqual([]);
  expect(commit?.url).toBe("/intake/commit");
  const sent = String(commit?.body);
  const words = new Set(sent.match(/"[^"]*"/g)?.map((word) => word.slice(1, -1)));
  const strange = [...words].filter((word) => !/^[0-9A-HJKMNP-TV-Z]{26}$/.test(word) && !/^[a-z][A-Za-z0-9-]{0,40}$/.test(word));
  expect(strange).toEqual([]);
  expect(sent).not.toContain("raw-one-sheet");
});

test("no planted identifier lies in the registry's folder", () => {
  expect(existsSync(path.join(registry.data, "registry.sqlite"))).toBe(true);
  expect(hunt.inFolder(registry.data)).toEqual([]);
});

test("the hunt would find an identifier that the page or its worker sent", async () => {
  const sent = recorder.caught.length;
  const [name] = plantedInRawFiles().names ?? [];
  await page.evaluate((text) => fetch(`/intake/key?of=${encodeURIComponent(text)}`), name ?? "");
  await page.evaluate((text) => navigator.sendBeacon("/intake/commit", `{"note":"${text}"}`), "07700 900768");
  const worker = page.workers()[0];
  await worker?.evaluate((text) => fetch("/intake/commit", { method: "POST", body: text }), "0187740");
  await expect.poll(() => recorder.caught.length).toBeGreaterThanOrEqual(sent + 3);
  const found = new Set(hunt.inRequests(recorder.caught.slice(sent)).map(({ of }) => of));
  expect(found).toContain(name);
  expect(found).toContain("07700 900768");
  expect(found).toContain("0187740");
});

test("the same file again brings nothing new, and says so before anything is sent", async () => {
  await page.getByRole("button", { name: "Bring another file" }).click();
  await bring(page, demoFile("raw-one-sheet.csv"));
  await goOn(page);
  await workedThrough(page);
  await turnTo(page, "What will be kept");
  await page.getByText(/^Nothing is new: the registry holds all \d+ rows as they are\.$/).waitFor();
  expect(await page.getByRole("button", { name: /^Keep/ }).count()).toBe(0);
  expect(await inRegistry(registry.data, (open) => open.batches())).toHaveLength(1);
});

test("the page complained of nothing on the way", () => {
  // the three requests by which the hunt was tried were refused, as they should be
  expect(complaints.filter((complaint) => !/403|415|ERR_ABORTED/.test(complaint))).toEqual([]);
});
