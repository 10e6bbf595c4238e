import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { chromium, type Page } from "playwright-core";
import { build } from "@/lib/cli/setup/build.mjs";
import { freePort, startServer } from "@/lib/cli/setup/serve.mjs";
import { inRegistry } from "../../integration/in-registry";
import { oneSheet } from "../intake/one-sheet";
import { memoryOf } from "./memory-of";
import { readWatch, type Watch, watch } from "./watch";

// npm run bench:tab [-- ROWS]: a long sheet brought in by the page, in Chromium, to a server as it runs for a unit: how its progress moves,
// how long the tab is held up, how soon a click on something else is answered, how soon each stop is, what is held then, and the server's memory.

const rows = Number(process.argv[2] ?? 100_000);
const secret = "invented unit, open key";
const long = { timeout: 60_000 };
const seconds = (ms: number) => `${(ms / 1000).toFixed(1)} s`;

const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-tab-"));
const bytes = oneSheet(rows);

async function held(data: string): Promise<string> {
  return inRegistry(data, async (registry) => {
    let lines = 0;
    for await (const _ of registry.held()) lines++;
    return `${(await registry.batches()).length} batches and ${lines} rows held`;
  });
}

/** Does something long; tells how it showed itself in the tab until it was over. */
async function watched(page: Page, name: string, start: () => Promise<void>, over: () => Promise<void>): Promise<number> {
  await page.evaluate("window.watch.begin()");
  const began = performance.now();
  await start();
  let isOver = false;
  const end = over().finally(() => {
    isOver = true;
  });
  while (!isOver) {
    // the cautions at the foot of the page are opened and shut: something else than the work
    await page.locator("footer summary").click(long);
    await page.waitForTimeout(200);
  }
  await end;
  const took = performance.now() - began;
  tell(name, took, await readWatch(page));
  return took;
}

function tell(name: string, took: number, { values, silenceMs, blockMs, clickMs, clicks }: Watch): void {
  console.log(
    `${name}: ${seconds(took)}; progress stood at ${values} values, the longest silence ${seconds(silenceMs)}; ` +
      `the tab was held up ${blockMs.toFixed(0)} ms at most, and a click answered within ${clickMs.toFixed(0)} ms (${clicks} clicks)`,
  );
}

const moments = [0.02, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];

/**
 * Starts something long, stops it at ten moments, and tells how soon the page said that it had stopped, and what is held then.
 * @returns whether the work was over once before the word
 */
async function stopped(page: Page, name: string, data: string, wholeMs: number, start: () => Promise<void>): Promise<boolean> {
  const lags: number[] = [];
  let answer = "";
  let isOver = false;
  for (const moment of moments) {
    await start();
    await page.waitForTimeout(Math.max(350, moment * wholeMs));
    const { ms, said } = await page.evaluate<{ ms: number; said: string }>("window.watch.stop()");
    answer = said;
    isOver = ms === null || !said.startsWith("Stopped.");
    if (ms === null || isOver) break;
    lags.push(ms);
  }
  const [all, longest] = [lags.map((ms) => ms.toFixed(0)).join(", "), Math.max(...lags).toFixed(0)];
  console.log(
    `${name}: stopped ${lags.length} times, ${longest} ms after the word at most (${all}); last said: ${answer}; ${await held(data)}`,
  );
  return isOver;
}

const bring = (page: Page) => () => page.locator("#files").setInputFiles(sheetFile);
const keep = (page: Page) => () => page.getByRole("button", { name: /^Keep/ }).click(long);
const goOn = (page: Page) => page.getByRole("button", { name: /^Go on:/ }).click(long);
// Playwright takes no buffer above 50 MB; a path has no limit
const sheetFile = path.join(folder, "long.csv");

/** From a sheet in the tab to the moment before it is worked through. */
async function keyMade(page: Page): Promise<void> {
  await goOn(page);
  await page.getByLabel("Passphrase", { exact: true }).fill(secret);
  await page.getByLabel("The same once more").fill(secret);
  await page.getByRole("button", { name: "Make the key" }).click();
  await page.getByLabel("First keeper, by role").selectOption("Data steward", long);
  await page.getByLabel("Second keeper, by role").selectOption("Head of the unit");
}

const putAway = (page: Page) => () => page.getByRole("button", { name: "It is put away: go on" }).click(long);
const workThrough = (page: Page) => () => page.getByRole("button", { name: "Work through the file" }).click(long);
const arrived = (page: Page) => () => page.getByText(/rows of \d+ columns/).waitFor(long);
const worked = (page: Page) => () => page.locator('.letter[aria-busy="false"]').waitFor(long);

async function turnTo(page: Page, part: string): Promise<void> {
  await page.getByRole("heading", { name: part }).getByRole("link").click(long);
}

type Served = { readonly page: Page; readonly data: string; readonly memory: () => ReturnType<typeof memoryOf> };

/** A server on a registry of its own, and a page of Intake. */
async function served(name: string, work: (served: Served) => Promise<void>): Promise<void> {
  const data = path.join(folder, name);
  const { child, address, ended } = await startServer({ data, port: await freePort() });
  const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
  try {
    page.on("dialog", (dialog) => dialog.accept());
    page.setDefaultTimeout(long.timeout);
    await page.addInitScript(watch);
    await page.goto(`${address}/intake`);
    await page.locator(".letter").waitFor();
    await work({ page, data, memory: () => memoryOf(child.pid) });
  } finally {
    await page.context().close();
    child.kill("SIGTERM");
    await ended;
  }
}

const times = { opening: 0, working: 0, keeping: 0 };

async function whole({ page, data, memory }: Served): Promise<void> {
  const before = memory();
  times.opening = await watched(page, "opening the file", bring(page), arrived(page));
  await keyMade(page);
  times.working = await watched(page, "working through", putAway(page), worked(page));
  for (const part of ["What we leave out", "What needs your word", "What will be kept"])
    await watched(
      page,
      `turning to ${part}`,
      () => turnTo(page, part),
      () => page.locator(".part.is-open h2", { hasText: part }).waitFor(),
    );
  times.keeping = await watched(page, "keeping", keep(page), () => page.locator(".receipt .answer").waitFor(long));
  const after = memory();
  console.log(`${await held(data)}; memory of the server: ${before.now} MB before, ${after.now} MB after, ${after.most} MB at most`);
}

async function stops({ page, data }: Served): Promise<void> {
  await stopped(page, "opening the file", data, times.opening, bring(page));
  await bring(page)();
  await arrived(page)();
  await keyMade(page);
  await putAway(page)();
  await page.locator(".working button").click();
  const isOver = await stopped(page, "working through", data, times.working, workThrough(page));
  if (!isOver) await workThrough(page)();
  await worked(page)();
  await turnTo(page, "What will be kept");
  await stopped(page, "keeping", data, times.keeping, keep(page));
}

await build();
writeFileSync(sheetFile, bytes);
console.log(`${rows} rows of one sheet, ${(bytes.length / 1e6).toFixed(1)} MB`);
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
try {
  await served("whole", whole);
  await served("stopped", stops);
} finally {
  await browser.close();
  rmSync(folder, { recursive: true });
}
