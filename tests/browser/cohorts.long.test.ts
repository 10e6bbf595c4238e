import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, inject, test } from "vitest";
import { oneBrowser } from "./browser";
import { lengthbook } from "./lengthbook";
import { lookOnPaper, lookOnScreens } from "./looks";

const { open } = oneBrowser();
const deep = encodeURIComponent(
  '{"bone":["femur"],"surgeryYear":{"from":2019},"any":[{"smoking":["never"]},{"ageAtSurgeryYears":{"to":30}}],"not":{"device":["circular-fixator"]}}',
);
const nobody = encodeURIComponent('{"bone":["femur"],"surgeryYear":{"from":1971,"to":1972}}');

const pages = [
  { page: "all", of: "filled", path: "/cohorts" },
  { page: "deep", of: "filled", path: `/cohorts?where=${deep}&by=device&for=motion` },
  { page: "bins", of: "filled", path: "/cohorts?by=gainMm:30/50/80,bone&measure=gain-error" },
  { page: "nobody", of: "filled", path: `/cohorts?where=${nobody}` },
  { page: "taken", of: "filled", path: "/cohorts?taken=femora" },
  { page: "bad-address", of: "filled", path: "/cohorts?where=%7B%22shoe%22%3A1%7D&by=boots&measure=none&for=nowhere" },
  { page: "empty", of: "empty", path: "/cohorts" },
] as const;

lookOnScreens(open, "cohorts-", pages);
lookOnPaper(open, "cohorts-", pages, ["a question, not a verdict"]);

/** Who is in the cohort of the page's address, as the command line says. */
async function shownBy(page: Page) {
  const where = new URL(page.url()).searchParams.get("where") ?? "{}";
  return JSON.parse(await lengthbook(inject("filled").data, ["cohort", "show", where, "--json"]));
}
const plain = (text: string) => text.replaceAll("\u00a0", " ");
const answerOf = async (page: Page) => plain(await page.locator("main .answer").innerText());

describe("building a cohort", () => {
  let page: Page;
  beforeAll(async () => {
    page = await open({ viewport: { width: 1280, height: 900 } });
    await page.goto(`${inject("filled").address}/cohorts`);
    await page.waitForLoadState("networkidle");
  });
  afterAll(() => page.context().close());

  test("a value ticked is counted, and the address is the cohort", async () => {
    await page.getByRole("button", { name: "add a condition" }).click();
    await page.getByLabel("Field").last().selectOption({ label: "Bone" });
    await page.getByLabel("femur", { exact: true }).check();
    await page.waitForURL(/where=/);
    expect(new URL(page.url()).searchParams.get("where")).toBe('{"bone":["femur"]}');
    const { segments, patients } = await shownBy(page);
    await page.locator(".answer", { hasText: `${segments} segments` }).waitFor();
    expect(await answerOf(page)).toMatch(new RegExp(`^${segments} segments in ${patients} patients, of \\d+ segments`));
  });

  test("the list of values stays open for a second tick", async () => {
    await page.getByLabel("tibia", { exact: true }).check();
    await page.waitForURL(/tibia/);
    expect(await page.locator(".values summary").innerText()).toBe("femur or tibia");
    expect((await shownBy(page)).words).toBe("bone femur or tibia");
  });

  test("a range with a decimal comma, half typed meaning what it says so far", async () => {
    await page.getByRole("button", { name: "add a condition" }).click();
    await page.getByLabel("Field").last().selectOption({ label: "Planned gain at start" });
    await page.getByLabel("Planned gain at start, from").fill("37,5");
    await page.waitForURL(/37\.5/);
    await page.getByLabel("Planned gain at start, to").fill("60");
    await page.waitForURL(/%22to%22%3A60|"to":60/);
    const { segments, words } = await shownBy(page);
    expect(words).toBe("bone femur or tibia and planned gain at start 37.5 to 60 mm");
    await page.locator(".answer", { hasText: `${segments} segment` }).waitFor();
  });

  test("conditions of which one must hold, and some that must not", async () => {
    await page.getByRole("button", { name: "add several of which one must hold" }).click();
    const group = page.locator(".condition-group").last();
    await group.getByLabel("Field").selectOption({ label: "Smoking" });
    await group.getByLabel("never", { exact: true }).check();
    await group.getByRole("button", { name: "add a condition" }).click();
    await group.getByLabel("Field").last().selectOption({ label: "Diabetes" });
    await group.getByLabel("no", { exact: true }).check();
    await page.waitForURL(/any/);
    expect((await shownBy(page)).words).toContain("(diabetes no or smoking never)");
    await group.getByLabel("How these hold together").selectOption({ label: "none of these holds" });
    await page.waitForURL(/not/);
    const { words, segments } = await shownBy(page);
    expect(words).toContain("not (diabetes no or smoking never)");
    await page.locator(".answer", { hasText: `${segments} segment` }).waitFor();
  });

  test("a step back takes the last change back, in address, sentences and counts", async () => {
    await page.goBack();
    await page.waitForURL((url) => !(url.searchParams.get("where") ?? "").includes("not"));
    await page.locator(".condition-group[data-join=any]").waitFor();
    const { segments } = await shownBy(page);
    await page.locator(".answer", { hasText: `${segments} segment` }).waitFor();
  });

  test("left out, a condition counts no more", async () => {
    await page.getByRole("button", { name: "leave these out" }).click();
    await page.getByRole("button", { name: "Leave out: Planned gain at start" }).click();
    await page.waitForURL((url) => url.searchParams.get("where") === '{"bone":["femur","tibia"]}');
    const { segments } = await shownBy(page);
    await page.locator(".answer", { hasText: `${segments} segments` }).waitFor();
  });

  test("all of it by keyboard alone", async () => {
    const keys = await open();
    await keys.goto(`${inject("filled").address}/cohorts`);
    await keys.waitForLoadState("networkidle");
    await keys.getByRole("button", { name: "add a condition" }).focus();
    await keys.keyboard.press("Enter");
    await keys.getByLabel("Field").last().focus();
    await keys.keyboard.type("Sex");
    await keys.getByLabel("female", { exact: true }).focus();
    await keys.keyboard.press("Space");
    await keys.waitForURL(/female/);
    expect((await shownBy(keys)).words).toBe("sex female");
    await keys.context().close();
  });
});

test("an address opens as the sentences that made it", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/cohorts?where=${deep}`);
  await page.waitForLoadState("networkidle");
  expect(await page.getByLabel("Field").evaluateAll((fields) => fields.map((field) => (field as HTMLSelectElement).value))).toEqual([
    "bone",
    "surgeryYear",
    "smoking",
    "ageAtSurgeryYears",
    "device",
  ]);
  expect(await page.getByLabel("Age at surgery, to").inputValue()).toBe("30");
  await page.context().close();
});

test("the flow adds up from the registry to the analysed", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/cohorts?where=${deep}&measure=gain-error`);
  const rows = await page
    .locator(".told-figure .data tbody tr")
    .evaluateAll((lines) => lines.map((line) => [...line.querySelectorAll("td")].map((cell) => cell.textContent ?? "")));
  let left = Number(rows[0]?.[1]);
  for (const [kind, segments] of rows.slice(1)) {
    if (kind === "stays") expect(Number(segments)).toBe(left);
    else left -= Number(segments);
  }
  expect(rows.length).toBeGreaterThan(5);
  await page.context().close();
});

describe("under a name", () => {
  let page: Page;
  beforeAll(async () => {
    page = await open();
  });
  afterAll(() => page.context().close());
  const save = async (where: string, name: string) => {
    await page.goto(`${inject("filled").address}/cohorts?where=${encodeURIComponent(where)}`);
    await page.getByLabel("Name", { exact: true }).fill(name);
    await page.getByRole("button", { name: "Save this cohort" }).click();
  };
  const held = async () => JSON.parse(await lengthbook(inject("filled").data, ["cohort", "list", "--json"]));

  test("a cohort is saved, listed, and known to the command line", async () => {
    await save('{"sex":["female"],"bone":["femur"]}', "Femora of women");
    await page.waitForURL(/saved=femora-of-women/);
    expect(await page.locator("main").innerText()).toContain("Saved as femora-of-women");
    expect(await held()).toContainEqual({ name: "femora-of-women", where: { bone: ["femur"], sex: ["female"] } });
  });

  test("a name that is another cohort's is given away only when that is said", async () => {
    await save('{"bone":["tibia"]}', "Femora of women");
    await page.waitForURL(/taken=femora-of-women/);
    expect(await page.locator("main").innerText()).toContain("is the name of another cohort: bone femur and sex female");
    expect(await held()).toContainEqual({ name: "femora-of-women", where: { bone: ["femur"], sex: ["female"] } });
    await page.getByRole("button", { name: "Give it the name" }).click();
    await page.waitForURL(/saved=femora-of-women/);
    expect(await held()).toContainEqual({ name: "femora-of-women", where: { bone: ["tibia"] } });
  });

  test("a name without a letter is refused in words", async () => {
    await save('{"bone":["tibia"]}', "…");
    await page.waitForURL(/unnamed=yes/);
    expect(await page.locator("main").innerText()).toContain("A name needs letters or digits");
  });

  test("two saved cohorts stand side by side", async () => {
    await save('{"bone":["femur"]}', "femora");
    await page.waitForURL(/saved=femora$/);
    await page.goto(`${inject("filled").address}/outcomes/side-by-side?between=cohorts&first=femora&second=femora-of-women&measure=gain`);
    expect(await answerOf(page)).toMatch(/^femora \(\d+ segments/);
  });

  test("cohorts that share segments are refused in words", async () => {
    await save('{"side":["left"]}', "left");
    await page.waitForURL(/saved=left/);
    await page.goto(`${inject("filled").address}/outcomes/side-by-side?between=cohorts&first=femora&second=left`);
    expect(await page.locator("main .answer").innerText()).toContain("a bone can’t be compared with itself");
  });
});

test("each group of a split leads to itself as a cohort", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/cohorts?by=gainMm:30/50/80`);
  const row = page.locator("section[aria-labelledby=groups] tbody tr").nth(1);
  const segments = await row.locator("td").first().innerText();
  await row.getByRole("link", { name: /as a cohort/ }).click();
  await page.waitForURL(/where=/);
  expect(await answerOf(page)).toMatch(new RegExp(`^${segments} segments in`));
  await page.context().close();
});

test("a bad address names each piece and what it may be, and repeats none of it", async () => {
  const page = await open();
  await page.goto(`${inject("filled").address}/cohorts?where=${encodeURIComponent('{"bone":["Mrs Invented"]}')}&by=boots`);
  const text = await page.locator("main").innerText();
  expect(text).toContain("where must be a cohort: bone requires codes among femur, tibia");
  expect(text).toContain("by must be fields of a segment or its patient");
  expect(text).not.toMatch(/Invented|boots/);
  await page.context().close();
});
