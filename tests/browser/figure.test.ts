import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, inject, test } from "vitest";
import type { HealingAnswer } from "@/lib/answers";
import { drawSvg, estimateText, layoutHealing } from "@/lib/charts";
import { oneBrowser } from "./browser";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
const asked = { measure: "surgery-to-consolidation", by: "bone" };
let record: HealingAnswer;
let page: Page;

beforeAll(async () => {
  const { address, data } = inject("filled");
  record = JSON.parse(await lengthbook(data, ["measure", asked.measure, "--by", asked.by, "--json"]));
  page = await open({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
  await page.goto(`${address}/outcomes?measure=${asked.measure}&by=${asked.by}`);
  await page.waitForLoadState("networkidle");
});

describe("the figure on the page says what the command line answers", () => {
  test("each group's mean and counts", async () => {
    const text = await page.locator(".figure .wide svg text").allTextContents();
    expect(record.groups.length).toBeGreaterThan(1);
    for (const group of record.groups) {
      expect(text).toContain(group.label);
      expect(text).toContain(estimateText(group.mean, "days/cm"));
      const counts = new RegExp(`^${group.segments} segments? in ${group.patients} patients?: ${group.healed} healed`);
      expect(text.filter((line) => counts.test(line))).toHaveLength(1);
    }
  });

  test("a mark for each analysed segment, in the drawing for the phone too", async () => {
    const analysed = record.groups.reduce((sum, group) => sum + (group.healed ?? 0) + (group.censored ?? 0), 0);
    for (const width of ["wide", "narrow"])
      expect(await page.locator(`.figure .${width} [data-mark][aria-label$="mm gained"]`).count()).toBe(analysed);
  });

  test("the table, to the digit shown", async () => {
    for (const group of record.groups) {
      const cells = await page.locator(".data tbody tr", { hasText: group.label }).first().locator("td").allInnerTexts();
      expect(cells.slice(0, 3)).toEqual([group.segments, group.patients, group.healed].map(String));
      const { estimate, lower, upper } = group.mean;
      const interval = lower === null || upper === null ? [] : [`${lower.toFixed(1)} to ${upper.toFixed(1)}`];
      expect(cells[6]?.split("\n")).toEqual([estimate?.toFixed(1) ?? "–", ...interval]);
    }
  });

  test("the result reference", async () => {
    expect(await page.locator("figcaption").innerText()).toContain(`Result reference ${record.stamp}.`);
  });
});

test("pointing at a mark reads it out, and leaving it stops", async () => {
  const mark = page.locator(".figure .wide [data-mark='5']");
  await mark.hover({ force: true });
  const label = await mark.getAttribute("aria-label");
  expect(await page.locator(".readout").innerText()).toBe(label);
  expect(await page.locator(".figure .is-current").count()).toBe(1);
  await page.mouse.move(2, 2);
  expect(await page.locator(".readout").innerText()).toMatch(/^Point at a mark/);
});

test("arrow keys walk through the marks from one stop", async () => {
  await page.locator(".walk").focus();
  const labels: string[] = [];
  for (const key of ["Home", "ArrowRight", "ArrowRight", "ArrowLeft", "End"]) {
    await page.keyboard.press(key);
    labels.push(await page.locator(".readout").innerText());
  }
  const all = await page.locator(".figure .wide [data-mark]").evaluateAll((marks) => marks.map((mark) => mark.getAttribute("aria-label")));
  expect(labels).toEqual([all[0], all[1], all[2], all[1], all.at(-1)]);
});

test("every mark can be read as a list", async () => {
  await page.getByText("Every mark as a list").click();
  await page.locator(".doings ol li").first().waitFor();
  expect(await page.locator(".doings ol li").count()).toBe(await page.locator(".figure .wide [data-mark]").count());
});

test("the saved figure is byte for byte the drawing, with its typeface inside", async () => {
  const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: "Save as .svg" }).click()]);
  expect(download.suggestedFilename()).toBe(`${asked.measure}-${record.stamp}.svg`);
  const marks: HealingAnswer = JSON.parse(
    await lengthbook(inject("filled").data, ["measure", asked.measure, "--by", asked.by, "--marks", "--json"]),
  );
  const saved = readFileSync(await download.path(), "utf8");
  expect(saved.replace(/<style>.*?<\/style>/, "")).toBe(drawSvg(layoutHealing(marks, { width: 880, unit: "days/cm" })));
  const elsewhere = await open();
  await elsewhere.route("**/*", (route) => route.fulfill({ body: saved, contentType: "image/svg+xml" }));
  await elsewhere.goto("http://elsewhere.invalid/figure.svg");
  const widths = "document.fonts.ready.then(() => [...document.querySelectorAll('SELECTOR')].map((text) => text.getComputedTextLength()))";
  const there = await elsewhere.evaluate<number[]>(widths.replace("SELECTOR", "text"));
  const here = await page.evaluate<number[]>(widths.replace("SELECTOR", ".figure .wide text"));
  expect(there.length).toBe(here.length);
  for (const [i, width] of there.entries()) expect(width).toBeCloseTo(here[i] ?? 0, 1);
  await elsewhere.context().close();
});

test("figure and caption can be copied", async () => {
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"], { origin: inject("filled").address });
  await page.getByRole("button", { name: "Copy the figure" }).click();
  await page.getByRole("status").filter({ hasText: "Figure copied." }).waitFor();
  expect(await page.evaluate("navigator.clipboard.read().then((items) => items[0].types)")).toEqual(["image/png"]);
  await page.getByRole("button", { name: "Copy the caption" }).click();
  await page.getByRole("status").filter({ hasText: "Caption copied." }).waitFor();
  // only the page keeps a number and its unit on one line
  const caption = (await page.locator("figcaption").innerText()).replaceAll("\u00a0", " ");
  expect(await page.evaluate("navigator.clipboard.readText()")).toBe(caption);
});
