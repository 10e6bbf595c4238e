import { expect, inject, test } from "vitest";
import { oneBrowser, overhang, shoot } from "./browser";
import { lookOnScreens } from "./looks";

const { open } = oneBrowser();
const at = (path: string) => inject("filled").address + path;

const pages = [
  { page: "casebook", path: "/casebook" },
  { page: "casebook-list", path: "/casebook?list=film-missing-6-months&sort=surgeryYear&order=falling" },
  { page: "casebook-search", path: "/casebook?search=femur+left+magnetic+2023&columns=gainMm,surgery-to-consolidation,surgeon" },
  { page: "casebook-cohort", path: `/casebook?where=${encodeURIComponent('{"device":["circular-fixator"]}')}&from=1` },
  { page: "casebook-nobody", path: "/casebook?search=forearm+1971" },
  { page: "casebook-bad-address", path: "/casebook?columns=shoe&sort=hat&order=up&from=0&list=x&where=%7B&colour=red" },
  { page: "case", path: "/casebook/16" },
  { page: "case-correct", path: "/casebook/16?correct=segment-1-gainMm" },
  { page: "case-correct-choose", path: "/casebook/1?correct=person-1&trouble=typed" },
  { page: "completeness", path: "/casebook/completeness" },
  { page: "case-as-of", path: "/casebook/2?asOf=1" },
] as const;

lookOnScreens(
  open,
  "",
  pages.map((one) => ({ ...one, of: "filled" })),
);

test.each(pages)("$page on paper: no controls, the cautions whole, what it is not", async ({ page: name, path }) => {
  const page = await open({ viewport: { width: 673, height: 950 } });
  await page.goto(at(path));
  await page.emulateMedia({ media: "print" });
  await shoot(page, `${name}-print`);
  expect(await page.locator("button:visible, nav a:visible, input:visible").count()).toBe(0);
  expect(await page.locator("body").innerText()).toContain("it is neither the clinical record nor a recall list");
  expect(await overhang(page)).toBe(0);
  await page.context().close();
});
