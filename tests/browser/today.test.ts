import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { expect, inject, test } from "vitest";
import { oneBrowser, shoot } from "./browser";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
const heads = "Hospital no,Bone,Side,Date of surgery,Gain (mm),Date of union";
const hashNow = async () => JSON.parse(await lengthbook(inject("changing").data, ["batches", "--json"])).at(-1).contentHash as string;

/** Brings invented rows in by the command line, while the server runs on the same registry. */
async function bringIn(rows: readonly string[]): Promise<void> {
  const { data, passphrase } = inject("changing");
  const file = path.join(mkdtempSync(path.join(tmpdir(), "lengthbook-rows-")), "rows.csv");
  writeFileSync(file, [heads, ...rows, ""].join("\n"));
  await lengthbook(data, ["intake", file, "--dates", "ymd", "--passphrase-file", passphrase, "--json"]);
}

async function takeBack(page: Page, batch: number): Promise<string> {
  await page.locator("summary", { hasText: `Take batch ${batch} back` }).click();
  await page.getByRole("button", { name: `Take batch ${batch} back` }).click();
  await page.waitForURL(/undo=/);
  return page.getByRole("status").innerText();
}

test("batches are taken back in two steps; one that a later one stands on is refused by name; a way back leads from each", async () => {
  await bringIn(["A1,femur,left,2023-01-10,40,2023-06-10", "A2,tibia,right,2023-02-10,35,2023-08-01"]);
  const first = await hashNow();
  await bringIn(["A1,femur,left,2023-01-10,42,2023-06-10"]);
  const second = await hashNow();
  const page = await open({ viewport: { width: 1280, height: 800 } });
  await page.goto(inject("changing").address);
  expect(await page.locator(".batch strong").allInnerTexts()).toEqual(["Batch 2", "Batch 1"]);

  await page.locator("summary", { hasText: "Take batch 1 back" }).click();
  await shoot(page, "today-take-back-wide");
  await page.locator("summary", { hasText: "Take batch 1 back" }).click();

  expect(await takeBack(page, 1)).toContain("Batch 1 can’t be taken back yet: batch 2 changed some of its cases since.");
  await shoot(page, "today-blocked-wide");
  expect(await hashNow()).toBe(second);
  expect(await takeBack(page, 2)).toContain("Batch 2 was taken back, as batch 3.");
  expect(await hashNow()).toBe(first);
  await page.reload();
  expect(await hashNow()).toBe(first);
  expect(await takeBack(page, 3)).toContain("Batch 3 was taken back, as batch 4.");
  expect(await hashNow()).toBe(second);
  await page.context().close();
});

test("the counts of Today add up to its segments", async () => {
  const page = await open();
  await page.goto(inject("filled").address);
  const numbers = (await page.locator("table.data td").allInnerTexts()).map(Number);
  const all = numbers.pop();
  expect(numbers.reduce((a, b) => a + b, 0)).toBe(all);
  expect(await page.locator(".answer").innerText()).toContain(`${all} segments`);
  await page.context().close();
});

test("an empty registry says what would stand there and offers the two ways on", async () => {
  const page = await open();
  await page.goto(inject("empty").address);
  const text = await page.locator("main").innerText();
  expect(text).toContain("Nothing has been brought in yet.");
  expect(text).toContain("Bring your first file");
  expect(text).toContain("npm run demo");
  await page.context().close();
});
