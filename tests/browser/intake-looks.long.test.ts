import type { Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { inRegistry } from "../integration/in-registry";
import { axeFaults, complaintsOf, oneBrowser, overhang, shoot } from "./browser";
import { type OwnRegistry, ownRegistry } from "./intake/own-registry";
import { bring, demoFile, goOn, loadMapping, openKey, passphrase, textFile, turnTo, workedThrough } from "./intake/walk";

const { open } = oneBrowser();

/** Every part and state of the letter, in the order in which a person comes by them; each leaves the page as it is to be looked at. */
const walk: readonly (readonly [name: string, to: (page: Page) => Promise<void>])[] = [
  ["1-arrived-empty", async () => {}],
  [
    "1-arrived-refused",
    async (page) => {
      await bring(page, textFile("empty.csv", ""));
      await page.getByText("This file can’t be taken in.").waitFor();
    },
  ],
  [
    "1-arrived",
    async (page) => {
      await page.getByRole("button", { name: "Leave this file out" }).click();
      await bring(page, demoFile("raw-one-sheet.csv"));
      await page.getByText("136 rows of 57 columns").waitFor();
    },
  ],
  ["2-key-new", goOn],
  [
    "2-key-new-refused",
    async (page) => {
      await page.getByLabel("Passphrase", { exact: true }).fill("too short");
      await page.getByRole("button", { name: "Make the key" }).click();
      await page.getByText("15 characters at least").waitFor();
    },
  ],
  [
    "2-key-code",
    async (page) => {
      await page.getByLabel("Passphrase", { exact: true }).fill(passphrase);
      await page.getByLabel("The same once more").fill(passphrase);
      await page.getByRole("button", { name: "Make the key" }).click();
      await page.locator("code.recovery").waitFor();
      await page.getByLabel("First keeper, by role").selectOption("Data steward");
      await page.getByLabel("Second keeper, by role").selectOption("Head of the unit");
    },
  ],
  [
    "3-understood-asking",
    async (page) => {
      await page.getByRole("button", { name: "It is put away: go on" }).click();
      await workedThrough(page);
    },
  ],
  [
    "3-understood-changing",
    async (page) => {
      await loadMapping(page, demoFile("raw-one-sheet.mapping.json"));
      await workedThrough(page);
      await page.getByRole("button", { name: "Change Implant" }).click();
      await page.keyboard.type("nail");
    },
  ],
  [
    "3-understood",
    async (page) => {
      await page.keyboard.press("Escape");
      await page.getByRole("button", { name: "Drill and osteotome" }).click();
      await workedThrough(page);
      await page.getByRole("heading", { name: "Nothing is open about the columns." }).waitFor();
    },
  ],
  ["4-comments", goOn],
  [
    "4-comments-coding",
    async (page) => {
      await page.getByRole("combobox", { name: "What happened?" }).focus();
      await page.keyboard.type("pin site");
      await page.keyboard.press("Enter");
      await page.locator(".event").waitFor();
      await page.keyboard.type("infect");
      await page.locator("[role=option]").first().waitFor();
    },
  ],
  [
    "5-stripped",
    async (page) => {
      await turnTo(page, "What we leave out");
      await workedThrough(page);
    },
  ],
  ["6-findings-asking", goOn],
  [
    "6-findings-by-row",
    async (page) => {
      await page.getByRole("button", { name: "By row" }).click();
      await page.locator(".refused").first().waitFor();
    },
  ],
  [
    "6-findings",
    async (page) => {
      await page.getByRole("button", { name: "By kind" }).click();
      for (const answer of ["Different patients", "A slip of typing"]) {
        await page.getByRole("button", { name: answer }).first().click();
        await workedThrough(page);
      }
      await page.locator(".group .finding").first().waitFor();
    },
  ],
  ["7-kept", goOn],
  [
    "7-kept-receipt",
    async (page) => {
      await page.getByRole("button", { name: /^Keep/ }).click();
      await page.getByText("Kept, as batch 1:").waitFor();
    },
  ],
  [
    "1-arrived-after-reload",
    async (page) => {
      await page.goto(`${new URL(page.url()).origin}/intake?step=findings`);
      await page.getByText("The file stays with you").waitFor();
    },
  ],
  [
    "2-key-wrong",
    async (page) => {
      await bring(page, demoFile("raw-one-sheet.csv"));
      await openKey(page, "not the unit's passphrase");
      await page.getByRole("alert").filter({ hasText: "does not open" }).waitFor();
    },
  ],
  [
    "7-kept-changes",
    async (page) => {
      await openKey(page);
      await workedThrough(page);
      await turnTo(page, "What arrived");
      await page.getByRole("button", { name: "Leave this file out" }).click();
      await bring(
        page,
        textFile(
          "later.csv",
          "Hosp No,Segment,Side,Date of op,Gain (cm),Sex\n0545665,Femur,L,2023-01-17,2.6,M\n0187799,Tibia,R,2025-01-17,3.1,F\n",
        ),
      );
      await goOn(page);
      await workedThrough(page);
      await turnTo(page, "What will be kept");
      await page.getByText("segments held and not in the file").click();
    },
  ],
];

const looks = [
  { look: "wide", viewport: { width: 1280, height: 800 }, colorScheme: "light", media: "screen" },
  { look: "phone", viewport: { width: 360, height: 740 }, colorScheme: "light", media: "screen" },
  { look: "dark", viewport: { width: 1280, height: 800 }, colorScheme: "dark", media: "screen" },
  { look: "paper", viewport: { width: 720, height: 1000 }, colorScheme: "light", media: "print" },
] as const;

describe.each(looks)("$look", ({ look, viewport, colorScheme, media }) => {
  let registry: OwnRegistry;
  let page: Page;
  let complaints: string[];
  beforeAll(async () => {
    registry = await ownRegistry();
    page = await open({ viewport, colorScheme, reducedMotion: "reduce" });
    complaints = complaintsOf(page);
    page.on("dialog", (dialog) => dialog.accept());
    await page.goto(`${registry.address}/intake`);
  });
  afterAll(async () => {
    await page.context().close();
    await registry.stop();
  });

  test.each(walk)("%s has no fault of accessibility and stays within its width", async (name, to) => {
    await to(page);
    await page.emulateMedia({ media });
    await shoot(page, `intake-${name}-${look}`);
    expect(await overhang(page)).toBe(0);
    expect(media === "print" ? [] : await axeFaults(page)).toEqual([]);
    await page.emulateMedia({ media: "screen" });
  });

  test("nothing was complained of on the way", () => {
    // Chromium names a reply aborted whose stream was read to its end
    expect(complaints.filter((complaint) => !/\/intake\/held net::ERR_ABORTED$/.test(complaint))).toEqual([]);
  });
});

test("long work says how far it is, and stopping it leaves nothing half done", async () => {
  const registry = await ownRegistry();
  const page = await open({ viewport: { width: 1280, height: 800 } });
  const rows = Array.from(
    { length: 40_000 },
    (_, i) => `${String(1_000_000 + i)},Femur,L,2023-01-${String(1 + (i % 28)).padStart(2, "0")},5.1,M`,
  );
  await page.goto(`${registry.address}/intake`);
  await bring(page, textFile("large.csv", `Hosp No,Segment,Side,Date of op,Gain (cm),Sex\n${rows.join("\n")}\n`));
  await page.getByText(/40.000 rows of 6 columns/).waitFor();
  await goOn(page);
  await page.getByLabel("Passphrase", { exact: true }).fill(passphrase);
  await page.getByLabel("The same once more").fill(passphrase);
  await page.getByRole("button", { name: "Make the key" }).click();
  await page.getByLabel("First keeper, by role").selectOption("Data steward");
  await page.getByLabel("Second keeper, by role").selectOption("Head of the unit");
  await page.getByRole("button", { name: "It is put away: go on" }).click();
  const done = `(() => { const bar = document.querySelector(".working progress"); return bar ? bar.position : 0; })()`;
  await expect.poll(() => page.evaluate(done), { timeout: 60_000 }).toBeGreaterThan(0.2);
  await shoot(page, "intake-3-working-wide");
  expect(await axeFaults(page)).toEqual([]);
  await page.getByRole("button", { name: "Stop" }).click();
  await page.getByRole("alert").filter({ hasText: "Stopped. Nothing was changed." }).waitFor();
  await shoot(page, "intake-3-stopped-wide");
  expect(await page.getByRole("heading", { name: "What will be kept" }).getByRole("link").count()).toBe(0);
  await page.getByRole("button", { name: "Work through the file" }).click();
  await expect.poll(() => page.locator(".column").count(), { timeout: 60_000 }).toBe(6);

  // a stop while the rows are on their way keeps all of them or none, and the page says which
  await turnTo(page, "What will be kept");
  await page.getByRole("button", { name: /^Keep/ }).click();
  await page.locator(".working", { hasText: "Sending the stripped rows" }).waitFor();
  await page.getByRole("button", { name: "Stop" }).click();
  const said = await page
    .locator("p[role=alert]")
    .filter({ hasText: /Stopped\. Nothing was changed\.|The stop came too late/ })
    .innerText();
  await page.waitForTimeout(2000);
  const settled = await page.locator("p[role=alert]").innerText();
  const batches = await inRegistry(registry.data, (open) => open.batches());
  expect(said).toMatch(/Stopped|too late/);
  expect(settled.startsWith("Stopped.") ? 0 : 1).toBe(batches.length);
  await page.context().close();
  await registry.stop();
});
