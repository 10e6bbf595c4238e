import { renameSync } from "node:fs";
import { join } from "node:path";
import { expect, inject, test } from "vitest";
import { axeFaults, oneBrowser, shoot } from "./browser";
import { lookOnPaper, lookOnScreens } from "./looks";

const { open } = oneBrowser();

const pages = [
  { page: "today", of: "filled", path: "/" },
  { page: "today-undone", of: "filled", path: "/?undo=3&batch=4" },
  { page: "today-undo-blocked", of: "filled", path: "/?undo=1&blockedBy=2,3" },
  { page: "outcomes", of: "filled", path: "/outcomes" },
  { page: "outcomes-by-device", of: "filled", path: "/outcomes?by=device&unit=months" },
  { page: "outcomes-two-splits", of: "filled", path: "/outcomes?by=bone,sex&rescue=competing" },
  { page: "outcomes-fixator", of: "filled", path: "/outcomes?measure=fixator" },
  { page: "outcomes-latency", of: "filled", path: "/outcomes?measure=latency&by=bone" },
  { page: "outcomes-cohort", of: "filled", path: `/outcomes?by=bone&where=${encodeURIComponent('{"sex":["female"]}')}` },
  { page: "outcomes-nobody", of: "filled", path: `/outcomes?where=${encodeURIComponent('{"surgeryYear":{"from":1971,"to":1972}}')}` },
  { page: "outcomes-bad-address", of: "filled", path: "/outcomes?by=shoe&unit=furlongs&where=%7B&asOf=99&colour=red" },
  { page: "today-empty", of: "empty", path: "/" },
  { page: "outcomes-empty", of: "empty", path: "/outcomes" },
  { page: "not-open", of: "broken", path: "/" },
  { page: "outcomes-not-open", of: "broken", path: "/outcomes" },
] as const;

lookOnScreens(open, "", pages);
lookOnPaper(open, "", pages, ["a question, not a verdict", "need a person’s judgement before anything is published"]);

test("an address without a page says so, with the way back", async () => {
  const page = await open();
  const response = await page.goto(`${inject("filled").address}/nowhere`);
  expect(response?.status()).toBe(404);
  expect(await page.locator("h1").innerText()).toBe("There is no page at this address.");
  await shoot(page, "no-such-page-wide");
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole("link", { name: "Go to Today" }).click();
  await page.waitForURL(`${inject("filled").address}/`);
  await page.context().close();
});

// last of this file: from here on the broken registry is a new one
test("a registry that can't be opened says why, and a mended one is served without a new start", async () => {
  const page = await open();
  const { address, data } = inject("broken");
  await page.goto(`${address}/outcomes`);
  expect(await page.locator("h1").innerText()).toBe("The registry can’t be opened.");
  expect(await page.locator("main").innerText()).toContain("Nothing was changed.");
  renameSync(join(data, "registry.sqlite"), join(data, "put-aside"));
  await page.goto(address);
  expect(await page.locator("h1").innerText()).toBe("Nothing has been brought in yet.");
  await page.context().close();
});
