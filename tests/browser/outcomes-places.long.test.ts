import { readFileSync } from "node:fs";
import type { Page } from "playwright-core";
import { beforeAll, describe, expect, inject, test } from "vitest";
import { oneBrowser } from "./browser";
import { lengthbook } from "./lengthbook";
import { lookOnPaper, lookOnScreens } from "./looks";

const { open } = oneBrowser();
const femora = encodeURIComponent('{"bone":["femur"]}');
const nobody = encodeURIComponent('{"surgeryYear":{"from":1971,"to":1972}}');

const places = [
  { page: "days-at-equal-gain", of: "whole", path: "/outcomes/days-at-equal-gain?by=sex" },
  { page: "healing-curve", of: "whole", path: "/outcomes/healing-curve" },
  { page: "distraction", of: "whole", path: `/outcomes/distraction?where=${femora}` },
  { page: "distraction-rate", of: "whole", path: "/outcomes/distraction?measure=distraction-rate&by=bone" },
  { page: "gain-against-plan", of: "whole", path: "/outcomes/gain-against-plan?tolerance=10&by=auditYear" },
  { page: "complications", of: "whole", path: "/outcomes/complications" },
  {
    page: "complications-split",
    of: "whole",
    path: "/outcomes/complications?by=bone&scheme=triple-contract&end=twelve-months&pins=left-out",
  },
  { page: "incidence", of: "whole", path: "/outcomes/incidence?by=bone" },
  { page: "proportion", of: "whole", path: "/outcomes/proportion?norm=standing-film-adults" },
  { page: "stature", of: "whole", path: "/outcomes/stature?measure=stature-gain-error" },
  { page: "alignment", of: "whole", path: "/outcomes/alignment?by=entry" },
  { page: "alignment-share", of: "whole", path: "/outcomes/alignment?measure=alignment-axis-outside&by=bone" },
  { page: "motion", of: "whole", path: "/outcomes/motion?by=bone" },
  { page: "scores", of: "whole", path: "/outcomes/scores" },
  { page: "follow-up", of: "whole", path: "/outcomes/follow-up" },
  { page: "side-by-side", of: "whole", path: "/outcomes/side-by-side" },
  {
    page: "side-by-side-tested",
    of: "whole",
    path: "/outcomes/side-by-side?field=bone&test=yes&measure=surgery-to-consolidation&measure=complication-segments-with-any&adjust=ageAtSurgeryYears&adjust=gainMm",
  },
  {
    page: "side-by-side-groups",
    of: "whole",
    path: "/outcomes/side-by-side?between=groups&test=yes&measure=surgery-to-consolidation&measure=gain-error",
  },
  { page: "side-by-side-cohorts", of: "whole", path: "/outcomes/side-by-side?between=cohorts" },
  { page: "curve-nobody", of: "whole", path: `/outcomes/healing-curve?where=${nobody}` },
  { page: "side-by-side-nobody", of: "whole", path: `/outcomes/side-by-side?where=${nobody}` },
  { page: "place-bad-address", of: "whole", path: "/outcomes/complications?scheme=shoe&end=never&colour=red&by=boots" },
  { page: "scores-empty", of: "empty", path: "/outcomes/scores" },
  { page: "side-by-side-empty", of: "empty", path: "/outcomes/side-by-side" },
] as const;

lookOnScreens(open, "place-", places);
lookOnPaper(open, "place-", places, ["a question, not a verdict"]);

describe("the page says what the command line answers", () => {
  test.each([
    ["healing-curve", "by=device&rescue=competing", ["--by", "device", "--rescue", "competing"]],
    ["days-at-equal-gain", "by=bone", ["--by", "bone"]],
    ["gain-against-plan", "tolerance=10&by=sex", ["--by", "sex", "--tolerance", "10"]],
    ["distraction", `where=${femora}`, ["--cohort", '{"bone":["femur"]}']],
    ["proportion", "measure=proportion-span", ["--measure", "proportion-span"]],
  ])("%s?%s", async (place, query, words) => {
    const { address, data } = inject("whole");
    const told = JSON.parse(await lengthbook(data, ["outcome", place, ...words, "--json"]));
    const page = await open();
    await page.goto(`${address}/outcomes/${place}?${query}`);
    const plain = (text: string) => text.replaceAll("\u00a0", " ");
    const text = plain(await page.locator("main").innerText());
    for (const sentence of told.sentences) expect(text).toContain(sentence);
    expect(plain(await page.locator("figcaption").first().innerText())).toContain(`Result reference ${told.references[0].stamp}.`);
    const shown = await page.locator(".told-figure .data").first().locator("tbody tr").count();
    expect(shown).toBe(told.figures[0].table.rows.length);
    await page.context().close();
  });

  test("complications: numerators and denominators are those of the measures", async () => {
    const { address, data } = inject("whole");
    const page = await open();
    await page.goto(`${address}/outcomes/complications?scheme=surgical`);
    for (const [id, title] of [
      ["complication-patients-with-any", "Patients with any event"],
      ["operations-per-segment", "Unplanned operations per segment"],
    ] as const) {
      const { groups } = JSON.parse(await lengthbook(data, ["measure", id, "--scheme", "surgical", "--json"]));
      const [{ share, rate }] = groups;
      const cells = await page.locator("tr", { hasText: title }).first().locator("td").allInnerTexts();
      expect(cells.slice(1, 3)).toEqual([share?.x ?? rate.events, share?.n ?? rate.exposure].map(String));
    }
    await page.context().close();
  });
});

describe("a figure taken along", () => {
  let page: Page;
  beforeAll(async () => {
    page = await open({ viewport: { width: 1280, height: 900 }, acceptDownloads: true });
    await page.goto(`${inject("whole").address}/outcomes/healing-curve`);
    await page.waitForLoadState("networkidle");
  });
  const saved = async (button: string) => {
    const [download] = await Promise.all([page.waitForEvent("download"), page.getByRole("button", { name: button }).click()]);
    return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
  };

  test("as .svg it is what the page holds, with its typeface inside", async () => {
    const { name, bytes } = await saved("Save as .svg");
    expect(name).toMatch(/^consolidation-curve-[0-9a-f]{12}\.svg$/);
    const html = await (await fetch(page.url())).text();
    expect(html).toContain(bytes.toString("utf8").split("\n")[3]);
    expect(bytes.toString("utf8")).toContain(
      '@font-face{font-family:"Source Sans 3 Variable";font-weight:200 900;src:url(data:font/woff2;base64,',
    );
    expect(bytes.toString("utf8")).toMatch(/^<svg xmlns="http:\/\/www\.w3\.org\/2000\/svg" width="880"/);
  });

  test("as .png it has 300 dots an inch, and says so", async () => {
    const { name, bytes } = await saved("Save as .png, 300 dpi");
    expect(name).toMatch(/\.png$/);
    expect(bytes.subarray(0, 8)).toEqual(Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]));
    // 880 units of 1/96 inch at 300 dots: 2750; in metres 300 / 0.0254 = 11 811 dots
    expect(bytes.readUInt32BE(16)).toBe(2750);
    const at = bytes.indexOf("pHYs");
    expect([bytes.readUInt32BE(at + 4), bytes.readUInt32BE(at + 8), bytes[at + 12]]).toEqual([11811, 11811, 1]);
    expect(bytes.lastIndexOf("pHYs")).toBe(at);
    expect(await page.locator("[role=status]", { hasText: "300 dots an inch" }).count()).toBe(1);
  });

  test("its numbers as .csv are those of its table", async () => {
    const { name, bytes } = await saved("Save the numbers as .csv");
    expect(name).toMatch(/\.csv$/);
    const lines = bytes.toString("utf8").trimEnd().split("\r\n");
    expect(lines.length - 1).toBe(await page.locator(".told-figure .data tbody tr").count());
    expect(lines[0]).toMatch(/^Group,By \(days\),At risk/);
  });
});

describe("ways from place to place", () => {
  test("the line of places carries cohort, split and batch along, and names where one is", async () => {
    const page = await open();
    await page.goto(`${inject("whole").address}/outcomes/motion?where=${femora}&by=sex&asOf=1&measure=motion-knee-extension.lost`);
    await page.getByRole("navigation", { name: "Outcomes" }).getByRole("link", { name: "Complications" }).click();
    await page.waitForURL(/complications/);
    const asked = Object.fromEntries(new URL(page.url()).searchParams);
    expect(asked).toEqual({ where: '{"bone":["femur"]}', by: "sex", asOf: "1" });
    expect(await page.locator(".places [aria-current=page]").innerText()).toBe("Complications");
    await page.context().close();
  });

  test("the cohort in the sentence leads to where it is changed, and back", async () => {
    const page = await open();
    await page.goto(`${inject("whole").address}/outcomes/motion?by=sex`);
    await page.locator("a.cohort").click();
    await page.waitForURL(/cohorts/);
    await page.getByRole("link", { name: "Back to motion with this cohort" }).click();
    await page.waitForURL(/outcomes\/motion\?by=sex/);
    await page.context().close();
  });

  test("a word changed with the pointer is asked at once; without scripts there is a button", async () => {
    const page = await open();
    await page.goto(`${inject("whole").address}/outcomes/complications`);
    await page.waitForLoadState("networkidle");
    await page.getByLabel("Scheme").selectOption("three-level");
    await page.waitForURL(/scheme=three-level/);
    expect(await page.locator("main").innerText()).toContain("Patients by their heaviest class (minor, serious, severe)");
    await page.context().close();
    const plain = await open({ javaScriptEnabled: false });
    await plain.goto(`${inject("whole").address}/outcomes/incidence`);
    await plain.getByLabel("Split by").selectOption("bone");
    await plain.getByRole("button", { name: "Ask" }).click();
    await plain.waitForURL(/by=bone/);
    expect(await plain.locator(".figure .wide svg").count()).toBe(1);
    await plain.context().close();
  });
});

describe("side by side", () => {
  test("case mix stands before any difference, p only when it is asked for", async () => {
    const page = await open();
    await page.goto(`${inject("whole").address}/outcomes/side-by-side?field=bone&measure=gain-error&measure=surgery-to-consolidation`);
    await page.waitForLoadState("networkidle");
    const captions = await page.locator("figcaption").allInnerTexts();
    expect(captions[0]).toMatch(/^Case.mix/);
    expect(await page.locator("main").innerText()).not.toMatch(/\bp (below|0\.)/);
    await page.getByLabel("p values").selectOption("yes");
    await page.waitForURL(/test=yes/);
    expect(await page.locator("main").innerText()).toMatch(/by Holm/);
    await page.context().close();
  });

  test("outcomes and covariates are ticked beneath the sentence, and the address holds them", async () => {
    const page = await open();
    await page.goto(`${inject("whole").address}/outcomes/side-by-side?field=bone`);
    await page.waitForLoadState("networkidle");
    await page.getByRole("checkbox", { name: "age at surgery", exact: true }).check();
    await page.getByRole("button", { name: "Ask" }).click();
    await page.waitForURL(/adjust=ageAtSurgeryYears/);
    expect(await page.locator("main").innerText()).toContain("adjusted for age at surgery");
    expect(new URL(page.url()).searchParams.getAll("measure").length).toBe(3);
    await page.context().close();
  });

  test("a covariate known only later is refused with its reason", async () => {
    const page = await open();
    await page.goto(`${inject("whole").address}/outcomes/side-by-side?field=bone&measure=surgery-to-consolidation&adjust=gainMm`);
    const text = await page.locator("main").innerText();
    expect(text).toContain("no adjusted estimate is given");
    expect(text).toContain("is known only after the clock’s start");
    await page.context().close();
  });
});
