import { mkdtempSync, rmSync } from "node:fs";
import { cpus, loadavg, tmpdir } from "node:os";
import path from "node:path";
import { chromium, type Page } from "playwright-core";
import { build } from "@/lib/cli/setup/build.mjs";
import { freePort, startServer } from "@/lib/cli/setup/serve.mjs";
import { filledRegistry } from "./registry";

// npm run bench:browser [SEGMENTS …]: how long a change of split takes in Chromium, from the change to the new answer, its figures and its numbers
// on the screen, on a warm server (of very many segments three splits are enough). Each split is asked twice: the first time it is worked out, the
// second time the answer is kept. Beside each line the load of the machine in that minute: above its number of processors, times are too long.

const sizes = process.argv.slice(2).map(Number);
const splits = [
  "bone",
  "sex",
  "device",
  "entry",
  "smoking",
  "growthPlates",
  "osteotomySite",
  "osteotomyOrientation",
  "surgeryYear",
  "ageAtSurgeryYears:18",
];
const places = ["/outcomes", "/outcomes/days-at-equal-gain", "/outcomes/healing-curve", "/outcomes/gain-against-plan"];

/** Runs in the page: when a choice is made, and when the answer with another result reference, the last thing of a page, was painted. */
const clock = `
  const reference = () => document.querySelector("main .worked-out code")?.textContent;
  addEventListener("change", () => { window.asked = { at: performance.now(), before: reference() }; delete window.answeredAt; }, { capture: true });
  new MutationObserver(() => {
    if (window.asked === undefined || window.answeredAt !== undefined || reference() === window.asked.before) return;
    window.answeredAt = null;
    requestAnimationFrame(() => setTimeout(() => { window.answeredAt = performance.now(); }));
  }).observe(document, { childList: true, subtree: true, characterData: true });
`;

type Change = { readonly total: number; readonly server: number; readonly kilobytes: number };

async function change(page: Page, split: string): Promise<Change> {
  await page.getByLabel("Split by", { exact: true }).selectOption(split);
  await page.waitForFunction(() => Number(Reflect.get(globalThis, "answeredAt")) > 0, undefined, { polling: 20, timeout: 120_000 });
  return page.evaluate<Change>(`(() => {
    const answer = performance.getEntriesByType("resource").findLast(({ name }) => new URL(name).searchParams.has("by"));
    return { total: window.answeredAt - window.asked.at, server: answer.responseStart - answer.requestStart, kilobytes: answer.decodedBodySize / 1024 };
  })()`);
}

function median(values: readonly number[]): number {
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;
}

function tell(name: string, changes: readonly Change[]): void {
  const of = (pick: (change: Change) => number) => median(changes.map(pick)).toFixed(0).padStart(6);
  console.log(
    `${name.padEnd(44)} ${of(({ total }) => total)} ms, of these first byte ${of(({ server }) => server)} ms; answer ${of(({ kilobytes }) => kilobytes)} kB (${changes.length} changes; load ${(loadavg()[0] ?? 0).toFixed(1)} of ${cpus().length})`,
  );
}

await build();
const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-bench-"));
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
for (const segments of sizes.length > 0 ? sizes : [5000, 100_000]) {
  const data = path.join(folder, String(segments));
  await filledRegistry(data, segments);
  for (const place of places) {
    // a server for each place, or what one has worked out would be there for the next
    const { child, address, ended } = await startServer({ data, port: await freePort() });
    const page = await (await browser.newContext({ viewport: { width: 1280, height: 900 } })).newPage();
    await page.addInitScript(clock);
    for (let warm = 0; warm < 3; warm++) await page.goto(address + place, { timeout: 120_000 });
    for (const round of ["worked out", "kept"]) {
      const changes: Change[] = [];
      for (const split of splits.slice(0, segments > 20_000 ? 3 : splits.length)) changes.push(await change(page, split));
      tell(`${segments} segments, ${place.replace("/outcomes", "") || "/healing"}, ${round}`, changes);
    }
    await page.context().close();
    child.kill("SIGTERM");
    await ended;
  }
}
await browser.close();
rmSync(folder, { recursive: true });
