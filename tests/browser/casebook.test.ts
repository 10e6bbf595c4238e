import { describe, expect, inject, test } from "vitest";
import type { CaseAnswer } from "@/lib/answers";
import { axeFaults, oneBrowser } from "./browser";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
const at = (path: string) => inject("filled").address + path;

type Rows = {
  readonly rows: readonly { readonly case: number; readonly segment: number }[];
  readonly segments: number;
  readonly cases: number;
};
const asked = async (...words: string[]): Promise<Rows> =>
  JSON.parse(await lengthbook(inject("filled").data, ["casebook", ...words, "--json"]));

describe("the page shows what the command line answers", () => {
  const casesOn = async (path: string) => {
    const page = await open();
    await page.goto(at(path));
    const numbers = await page.locator(".book tbody th a").allInnerTexts();
    const text = await page.locator(".answer").innerText();
    await page.context().close();
    return { numbers: numbers.map(Number), text };
  };

  test("a search", async () => {
    const { numbers, text } = await casesOn("/casebook?search=femur+left+2023");
    const answer = await asked("--search", "femur left 2023");
    expect(answer.segments).toBeGreaterThan(5);
    expect(numbers).toEqual(answer.rows.map((row) => row.case));
    expect(text).toContain(`${answer.segments} segments in ${answer.cases} cases, of 480 held`);
  });
  test("a cohort, sorted", async () => {
    const where = '{"bone":["tibia"],"gainMm":{"from":40}}';
    const { numbers } = await casesOn(`/casebook?where=${encodeURIComponent(where)}&sort=gainMm&order=falling`);
    const answer = await asked("--where", where, "--sort", "gainMm", "--descending", "--limit", "100");
    expect(numbers).toEqual(answer.rows.map((row) => row.case));
  });
  test("windows follow one another without a gap", async () => {
    const windows = await Promise.all([1, 101, 201, 301, 401].map((from) => casesOn(`/casebook?from=${from}`)));
    expect(windows.flatMap(({ numbers }) => numbers)).toEqual((await asked()).rows.map((row) => row.case));
  });
  test("a case: its segments, its gains and its history", async () => {
    const answer: CaseAnswer = JSON.parse(await lengthbook(inject("filled").data, ["casebook", "2", "--json"]));
    const page = await open();
    await page.goto(at("/casebook/2"));
    expect(await page.locator(".segment > h2").allInnerTexts()).toEqual(
      answer.segments.map(({ side, bone, surgeryYear }) => `${side.charAt(0).toUpperCase()}${side.slice(1)} ${bone}, ${surgeryYear}`),
    );
    expect(await page.locator(".segment .figure .wide svg").count()).toBeGreaterThanOrEqual(answer.segments.length);
    expect(await page.locator(".history > li").count()).toBe(answer.history.length);
    await page.context().close();
  });
});

test("the address is the state: list, order, columns and search are in it, and a head sorts", async () => {
  const page = await open({ viewport: { width: 1280, height: 900 } });
  await page.goto(at("/casebook"));
  await page.waitForLoadState("networkidle");
  await page.getByLabel("List").selectOption("healing-date-missing");
  await page.waitForURL(/list=healing-date-missing/);
  await page.getByRole("link", { name: "Last film held" }).click();
  await page.waitForURL(/sort=lastFilm/);
  const days = (await page.locator(".book tbody tr td:nth-child(5)").allInnerTexts()).map(Number);
  expect(days).toEqual([...days].sort((a, b) => a - b));
  await page.getByText("Choose the columns").click();
  await page.getByRole("checkbox", { name: "Sex", exact: true }).check();
  await page.getByRole("button", { name: "Show these columns" }).click();
  await page.waitForURL(/columns=sex/);
  expect(await page.locator(".book thead th").allInnerTexts()).toContainEqual("Sex");
  await page.getByRole("searchbox").fill("female");
  await page.getByRole("button", { name: "Find" }).click();
  await page.waitForURL(/search=female/);
  for (const piece of ["list=healing-date-missing", "sort=lastFilm", "columns="]) expect(page.url()).toContain(piece);
  const before = await page.locator(".book").innerText();
  await page.reload();
  expect(await page.locator(".book").innerText()).toBe(before);
  await page.context().close();
});

test("on a phone the case stays while its columns scroll", async () => {
  const page = await open({ viewport: { width: 360, height: 740 } });
  await page.goto(at("/casebook"));
  const first = page.locator(".book tbody th").first();
  const before = await first.boundingBox();
  await page.locator(".book").evaluate((book) => book.scrollTo({ left: 400 }));
  expect((await first.boundingBox())?.x).toBe(before?.x);
  expect(await page.locator(".book").evaluate((book) => book.scrollLeft)).toBeGreaterThan(100);
  await page.context().close();
});

test("a number that no case has, and one that is none, have the way back", async () => {
  const page = await open();
  for (const path of ["/casebook/999999", "/casebook/abc", "/casebook/16?asOf=999"]) {
    expect((await page.goto(at(path)))?.status()).toBe(404);
    expect(await page.locator("h1").innerText()).toBe("No such case is held.");
  }
  await page.getByRole("link", { name: "Show the casebook" }).click();
  await page.waitForURL(at("/casebook"));
  await page.context().close();
});

test("an empty registry says what would stand there", async () => {
  const page = await open();
  await page.goto(`${inject("empty").address}/casebook`);
  expect(await page.locator("h1").innerText()).toBe("No case is held yet.");
  expect(await axeFaults(page)).toEqual([]);
  await page.context().close();
});

test("a name or a local number that is searched for stays in the tab, and in an address it is refused", async () => {
  const page = await open();
  const sent: string[] = [];
  await page.goto(at("/casebook"), { waitUntil: "networkidle" });
  page.on("request", (request) => sent.push(request.url()));
  for (const typed of ["Quellthorpe", "femur Quellthorpe", "0187741", "987654"]) {
    await page.getByRole("searchbox").fill(typed);
    await page.getByRole("button", { name: "Find" }).click();
    await page.getByRole("alert").filter({ hasText: "Nothing was sent" }).waitFor();
    expect(await page.getByRole("alert").filter({ hasText: "Nothing was sent" }).innerText()).not.toContain(typed);
  }
  expect(await axeFaults(page)).toEqual([]);
  expect(page.url()).toBe(at("/casebook"));
  expect(sent).toEqual([]);
  await page.getByRole("searchbox").fill("tib");
  expect(await page.getByText("Nothing was sent").isVisible()).toBe(false);
  await page.keyboard.press("Enter");
  await page.waitForURL(at("/casebook?search=tib"));
  await page.goto(at("/casebook?search=Quellthorpe"));
  expect(await page.locator("main").innerText()).toContain("search must be numbers of cases, years");
  expect(await page.locator("body").innerText()).not.toContain("Quellthorpe");
  await page.context().close();
});
