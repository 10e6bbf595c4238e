import { mkdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import type { AxeResults } from "axe-core";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll } from "vitest";

const args = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--disable-dev-shm-usage",
];
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");
const shots = path.join(import.meta.dirname, "shots");

/** One browser a test file. */
export function oneBrowser(): { readonly open: (options?: BrowserContextOptions) => Promise<Page> } {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args });
  });
  afterAll(() => browser?.close());
  return {
    open: async (options) => {
      if (!browser) throw new Error("the browser is opened before the first test of a file");
      const context = await browser.newContext(options);
      return context.newPage();
    },
  };
}

/** Everything that a page complains of, in the console or by an error that nobody caught. */
export function complaintsOf(page: Page): string[] {
  const complaints: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  page.on("requestfailed", (request) => complaints.push(`${request.url()} ${request.failure()?.errorText ?? "failed"}`));
  return complaints;
}

declare const window: { readonly axe: { run(): Promise<AxeResults> } };

/** Faults of accessibility, each with the first element that has it. */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(axe);
  const { violations } = await page.evaluate(() => window.axe.run());
  return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 200)}`);
}

/** Keeps a picture of the page for whoever looks at it. */
export async function shoot(page: Page, name: string): Promise<void> {
  mkdirSync(shots, { recursive: true });
  await page.evaluate("document.fonts.ready");
  await page.screenshot({ path: path.join(shots, `${name}.png`), fullPage: true });
}

/** How far a page sticks out of its window to the right, px. */
export function overhang(page: Page): Promise<number> {
  return page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth");
}
