import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { type Browser, type BrowserContextOptions, chromium } from "playwright-core";
import { build } from "@/lib/cli/setup/build.mjs";
import { freePort, startServer } from "@/lib/cli/setup/serve.mjs";
import { setup as bundleCommandLine } from "../../command-line";
import { registryOf, type Size, sizes } from "./registries";

// npx tsx tests/browser/look/figures.ts [SIZE,…] [PAGE,…] [VIEW,…]: pictures of every figure of Outcomes and Cohorts at each size of
// registry, on a wide screen, a phone, in the dark, without colour and on paper, for whoever looks at them; in tests/browser/shots.

const femora = encodeURIComponent('{"bone":["femur"]}');
const nobody = encodeURIComponent('{"surgeryYear":{"from":1971,"to":1972}}');
const pages: Readonly<Record<string, string>> = {
  healing: "/outcomes",
  "healing-by": "/outcomes?by=device",
  "equal-gain": "/outcomes/days-at-equal-gain?by=sex",
  "equal-gain-by": "/outcomes/days-at-equal-gain?by=device",
  curve: "/outcomes/healing-curve",
  "curve-by": "/outcomes/healing-curve?by=device&rescue=competing",
  distraction: `/outcomes/distraction?where=${femora}`,
  "distraction-rate": "/outcomes/distraction?measure=distraction-rate&by=bone",
  plan: "/outcomes/gain-against-plan?tolerance=10&by=auditYear",
  "plan-all": "/outcomes/gain-against-plan",
  complications: "/outcomes/complications",
  "complications-by": "/outcomes/complications?by=bone&scheme=triple-contract",
  incidence: "/outcomes/incidence",
  "incidence-by": "/outcomes/incidence?by=device",
  proportion: "/outcomes/proportion?norm=standing-film-adults",
  "proportion-by": "/outcomes/proportion?by=sex",
  stature: "/outcomes/stature?measure=stature-gain-error",
  alignment: "/outcomes/alignment?by=entry",
  "alignment-share": "/outcomes/alignment?measure=alignment-axis-outside&by=bone",
  motion: "/outcomes/motion?by=bone",
  scores: "/outcomes/scores",
  "follow-up": "/outcomes/follow-up",
  "follow-up-by": "/outcomes/follow-up?by=device",
  "side-by-side": "/outcomes/side-by-side?field=bone&test=yes&adjust=ageAtSurgeryYears",
  "side-by-side-groups":
    "/outcomes/side-by-side?between=groups&test=yes&measure=surgery-to-consolidation&measure=gain-error&measure=maturation",
  flow: `/cohorts?where=${femora}`,
  nobody: `/outcomes/healing-curve?where=${nobody}`,
};
const wide = { viewport: { width: 1280, height: 800 } };
type View = BrowserContextOptions & { readonly grey?: true; readonly paper?: true };
const views: Readonly<Record<string, View>> = {
  wide,
  phone: { viewport: { width: 360, height: 740 } },
  dark: { ...wide, colorScheme: "dark" },
  grey: { ...wide, grey: true },
  paper: { viewport: { width: 673, height: 950 }, paper: true },
};

const among = <T extends string>(all: readonly T[], asked: string | undefined) =>
  asked === undefined || asked === "all" ? all : all.filter((one) => asked.split(",").includes(one));
const [askedSizes, askedPages, askedViews] = [2, 3, 4].map((i) => process.argv[i]);
const shots = path.join(import.meta.dirname, "../shots");

async function look(browser: Browser, address: string, size: Size): Promise<void> {
  for (const view of among(Object.keys(views), askedViews)) {
    const { grey, paper, ...options }: View = views[view] ?? wide;
    const page = await (await browser.newContext({ ...options, reducedMotion: "reduce" })).newPage();
    if (paper) await page.emulateMedia({ media: "print" });
    for (const name of among(Object.keys(pages), askedPages)) {
      await page.goto(address + pages[name], { waitUntil: "networkidle" });
      if (grey) await page.evaluate("document.documentElement.style.filter = 'grayscale(1)'");
      await page.evaluate("document.fonts.ready");
      await page.screenshot({ path: path.join(shots, `look-${name}-${size}-${view}.png`), fullPage: true });
    }
    await page.context().close();
  }
}

mkdirSync(shots, { recursive: true });
await build();
await bundleCommandLine();
const folder = mkdtempSync(path.join(tmpdir(), "lengthbook-look-"));
const browser = await chromium.launch({ executablePath: "/usr/bin/chromium", args: ["--no-sandbox", "--disable-gpu"] });
for (const size of among(sizes, askedSizes)) {
  const { child, address, ended } = await startServer({ data: await registryOf(size, folder), port: await freePort() });
  try {
    await look(browser, address, size);
  } finally {
    child.kill("SIGTERM");
    await ended;
  }
  console.log(`${size} done`);
}
await browser.close();
rmSync(folder, { recursive: true });
