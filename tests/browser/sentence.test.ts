import { expect, inject, test } from "vitest";
import { oneBrowser } from "./browser";

const { open } = oneBrowser();
const asked = (url: string) => Object.fromEntries([...new URL(url).searchParams].filter(([, value]) => value !== ""));

test("a word chosen with the pointer is asked at once, and the address is the question", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/outcomes`);
  await page.waitForLoadState("networkidle");
  await page.getByLabel("Split by").selectOption({ label: "bone" });
  await page.waitForURL(/by=bone/);
  await page.waitForLoadState("networkidle");
  await page.getByLabel("Unit").selectOption({ label: "months/cm" });
  await page.waitForURL(/unit=months/);
  expect(asked(page.url())).toEqual({ measure: "surgery-to-consolidation", by: "bone", rescue: "counted", unit: "months" });
  expect(await page.locator(".figure .wide svg text", { hasText: "months/cm (95 % CI" }).count()).toBeGreaterThan(1);
  await page.goBack();
  await page.waitForURL(/unit=days/);
  expect(asked(page.url())).toMatchObject({ by: "bone", unit: "days" });
  await page.goBack();
  await page.waitForURL((url) => url.search === "");
  await page.context().close();
});

test("the answer comes into the page that stands, and a step back brings words, answer and figure back", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/outcomes`);
  await page.waitForLoadState("networkidle");
  await page.evaluate("globalThis.stood = true");
  const shows = async (split: string) => {
    await page.waitForURL((url) => url.searchParams.get("by") === split);
    const title = `Surgery to consolidation by ${split}`;
    // the address is there before the answer
    await page.locator("figcaption", { hasText: title }).waitFor();
    expect(await page.getByLabel("Split by").inputValue()).toBe(split);
    // the drawing too was named afresh, and bears no tip over all of it
    expect(await page.locator(".figure .wide svg").getAttribute("aria-label")).toBe(title);
    expect(await page.locator(".figure .wide svg > title").count()).toBe(0);
  };
  await page.getByLabel("Split by").selectOption("bone");
  await shows("bone");
  await page.locator(".walk").focus();
  await page.keyboard.press("Home");
  expect(await page.locator(".readout").innerText()).toMatch(/^Femur: /);
  await page.getByLabel("Split by").selectOption("sex");
  await shows("sex");
  // what was read out of the figure before is not said of this one
  expect(await page.locator(".readout").innerText()).toMatch(/^Point at a mark/);
  await page.goBack();
  await shows("bone");
  expect(await page.evaluate("globalThis.stood")).toBe(true);
  await page.context().close();
});

test("a word chosen with the keyboard waits for Enter", async () => {
  const page = await open();
  const address = `${inject("filled").address}/outcomes`;
  await page.goto(address);
  await page.waitForLoadState("networkidle");
  const second = await page.getByLabel("Split by").locator("option").nth(2).getAttribute("value");
  await page.getByLabel("Split by").focus();
  await page.keyboard.press("ArrowDown");
  await page.keyboard.press("ArrowDown");
  await page.getByRole("button", { name: "Ask" }).waitFor();
  expect(page.url()).toBe(address);
  await page.keyboard.press("Enter");
  await page.waitForURL((url) => url.searchParams.get("by") === second);
  await page.context().close();
});

test("without scripts the sentence is a form with a button, and the figure stands", async () => {
  const page = await open({ javaScriptEnabled: false });
  await page.goto(`${inject("filled").address}/outcomes`);
  await page.getByLabel("Split by").selectOption({ label: "bone" });
  await page.getByRole("button", { name: "Ask" }).click();
  await page.waitForURL(/by=bone/);
  expect(await page.locator(".figure .wide svg [data-mark]").count()).toBeGreaterThan(100);
  await page.context().close();
});

test("cohort and batch of the address stay when a word is changed", async () => {
  const page = await open();
  const where = '{"sex":["female"]}';
  await page.goto(`${inject("filled").address}/outcomes?asOf=1&where=${encodeURIComponent(where)}`);
  await page.waitForLoadState("networkidle");
  expect(await page.locator(".question").innerText()).toContain("sex female");
  await page.getByLabel("Split by").selectOption({ label: "bone" });
  await page.waitForURL(/by=bone/);
  expect(asked(page.url())).toMatchObject({ where, asOf: "1", by: "bone" });
  await page.context().close();
});

test("a bad address names each piece and what it may be, and repeats none of it", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/outcomes?by=Mrs-Invented&unit=furlongs&asOf=99`);
  const text = await page.locator("main").innerText();
  expect(text).toContain("by must be fields of a segment or its patient");
  expect(text).toContain("unit must be days or months");
  expect(text).toMatch(/asOf must be a batch from 1 to \d+/);
  expect(text).not.toMatch(/Invented|furlongs/);
  await page.context().close();
});

test("words say what was answered: another field brings its own groups, a step back brings the words back", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/outcomes/side-by-side?measure=gain`);
  await page.waitForLoadState("networkidle");
  const groups = async () => [await page.getByLabel("First group").inputValue(), await page.getByLabel("Second group").inputValue()];
  const before = await groups();
  await page.getByLabel("Field").selectOption("bone");
  await page.locator(".answer", { hasText: /^Femur/ }).waitFor();
  expect(await groups()).toEqual(["femur", "tibia"]);
  await page.getByLabel("Compared as").selectOption("groups");
  await page.locator(".question", { hasText: /all \d groups do/ }).waitFor();
  await page.goBack();
  await page.getByLabel("First group").waitFor();
  expect(await groups()).toEqual(["femur", "tibia"]);
  await page.goBack();
  await page.locator(".answer", { hasNotText: /^Femur/ }).waitFor();
  expect([await page.getByLabel("Field").inputValue(), ...(await groups())]).toEqual(["device", ...before]);
  await page.context().close();
});

test("scores are compared one by one: each stands among the outcomes, and a bare id is refused in words", async () => {
  const page = await open();
  const { address } = inject("whole");
  await page.goto(`${address}/outcomes/side-by-side?field=sex&measure=gain`);
  await page.waitForLoadState("networkidle");
  await page.getByRole("checkbox", { name: "Change of score (demo function)", exact: true }).check();
  await page.getByRole("button", { name: "Ask" }).click();
  await page.waitForURL(/measure=score-change\.demo-function/);
  expect(await page.locator("main").innerText()).toMatch(/Change of score \(demo function\), mean points, \w+ less \w+: −?\d+\.\d points/);
  for (const asked of [
    "field=sex&measure=score-change",
    "field=sex&measure=score-change.other",
    "between=groups&field=device&measure=score-change",
  ]) {
    await page.goto(`${address}/outcomes/side-by-side?${asked}`);
    expect(await page.locator("main").innerText()).toContain("Scores are compared one by one: tick the score by its name.");
  }
  await page.context().close();
});
