import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { decimals } from "@/lib/charts";
import { freePort, startServer } from "@/lib/cli/setup/serve.mjs";
import { openRegistry } from "@/lib/registry";
import { trap } from "../integration/answers/trap";
import { oneBrowser } from "./browser";
import { lengthbook } from "./lengthbook";

/** A registry of two groups on one line of days, the first with short gains, the second with long ones; some patients with both sides done. */
const { open } = oneBrowser();
const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-trap-"));
let server: Awaited<ReturnType<typeof startServer>>;
let page: Page;
beforeAll(async () => {
  const registry = await openRegistry(folder, { create: true });
  await registry.commit(trap(), { at: "2021-01-01T00:00:00Z" });
  await registry.close();
  server = await startServer({ data: folder, port: await freePort() });
  page = await open();
});
afterAll(async () => {
  server.child.kill("SIGTERM");
  await server.ended;
  rmSync(folder, { recursive: true });
});

const textOf = async (asked: string) => {
  await page.goto(`${server.address}${asked}`);
  return (await page.locator("main").innerText()).replaceAll("\u00a0", " ");
};

test("at equal gain no difference is shown; the index differs, and the page says why not to compare it", async () => {
  const text = await textOf("/outcomes/days-at-equal-gain?by=device");
  expect(text).toMatch(/No difference is shown at equal gain: on straight lines Magnetic nail less Monolateral fixator is (−?\d\.\d) days/);
  const index = /The index by itself, Magnetic nail less Monolateral fixator: (\S+) days\/cm \(95 % CI (\S+) to/.exec(text);
  expect(Number(index?.[1])).toBeGreaterThan(5);
  expect(Number(index?.[2])).toBeGreaterThan(5);
  expect(text).toContain("An index falls with gain by arithmetic because some days don’t depend on gain. Compare days at equal gain.");
});

test("side by side says the same, the caution beside it", async () => {
  const text = await textOf("/outcomes/side-by-side?measure=surgery-to-consolidation");
  expect(text).toMatch(/days at equal gain, Magnetic nail over Monolateral fixator: .*, so no difference is shown/);
  expect(text).toMatch(/the index by itself, of the healed alone, differs by \d/);
  expect(text).toContain("Compare days at equal gain.");
});

test("the interval by patient stands in sentence, figure and table; of one bone a patient it is that of bones", async () => {
  for (const [asked, cohort] of [
    ["/outcomes", "{}"],
    [`/outcomes?where=${encodeURIComponent('{"side":["left"]}')}`, '{"side":["left"]}'],
  ] as const) {
    const text = await textOf(asked);
    const answer = JSON.parse(await lengthbook(folder, ["measure", "surgery-to-consolidation", "--cohort", cohort, "--json"]));
    const { mean, plain } = answer.groups[0];
    const limits = `${decimals(mean.lower, 1)} to ${decimals(mean.upper, 1)}`;
    expect(await page.locator("main .answer").innerText()).toContain(limits);
    expect((await page.locator(".figure .wide svg text").allTextContents()).join()).toContain(limits);
    expect(await page.locator(".data td .under").first().innerText()).toBe(limits);
    expect(text).toContain(`${limits}\t${decimals(plain.lower, 1)} to ${decimals(plain.upper, 1)}`);
    const width = await page.locator(".told-table .data td").last().innerText();
    if (cohort === "{}") expect(width).not.toBe("1.00");
    else expect(width).toBe("1.00");
  }
});
