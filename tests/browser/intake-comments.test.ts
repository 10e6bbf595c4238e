import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { EventRow, SegmentRow } from "@/lib/codebook";
import { inRegistry } from "../integration/in-registry";
import { oneBrowser } from "./browser";
import { type OwnRegistry, ownRegistry } from "./intake/own-registry";
import { bring, goOn, makeKey, openPart, textFile, turnTo, workedThrough } from "./intake/walk";

const { open } = oneBrowser();
let registry: OwnRegistry;
let page: Page;

const rows = [
  "0187741,Femur,L,2023-01-04,Pin site infection at three weeks; oral antibiotics",
  "0187742,Femur,R,2023-02-04,Happy with height",
  "0187743,Tibia,L,2023-03-04,happy with height.",
  "0187744,Tibia,R,2023-04-04,Knee stiff; manipulated 1 June",
  "0187745,Femur,L,2023-05-04,To be asked about",
];
const file = textFile(
  "comments.csv",
  `Hosp No,Segment,Side,Date of op,Comments\n${rows.map((row) => row.replace(/,([^,]*)$/, ',"$1"')).join("\n")}\n`,
);

beforeAll(async () => {
  registry = await ownRegistry();
  page = await open({ viewport: { width: 1280, height: 900 } });
  await page.goto(`${registry.address}/intake`);
  await bring(page, file);
  await goOn(page);
  await makeKey(page);
  await workedThrough(page);
  await goOn(page);
});
afterAll(async () => {
  await page.context().close();
  await registry.stop();
});

const shown = () => page.locator(".desk blockquote").innerText();
const stands = (words: string) => page.locator(".desk .paper > p", { hasText: words }).waitFor();

test("each comment stands beside what else its row says, without the patient's number", async () => {
  expect(await openPart(page)).toBe("What the comments say");
  expect(await shown()).toBe("Pin site infection at three weeks; oral antibiotics");
  const facts = await page.locator(".facts").innerText();
  expect(facts).toContain("Segment");
  expect(facts).not.toContain("0187741");
});

test("an event is typed, found and added from the keyboard, and what is known of it is coded", async () => {
  // the line to type in has the focus: nothing is clicked
  await page.keyboard.type("pin inf");
  await page.locator("[role=option]").first().waitFor();
  expect(await page.locator("[role=option]").first().innerText()).toContain("Pin site infection");
  await page.keyboard.press("Enter");
  await stands("Comment 1 of 5, row 2: 1 event coded");
  await page.getByLabel("Days after surgery").fill("21");
  await page.getByLabel("Handling").selectOption("Oral drug");
});

test("with nothing typed, Enter adds no event, 0 says that there is nothing to code, and Page Down and Up turn the comments", async () => {
  const line = page.getByRole("combobox", { name: "What happened?" });
  await line.focus();
  await page.keyboard.press("Enter");
  await stands("Comment 1 of 5, row 2: 1 event coded");
  await page.keyboard.press("PageDown");
  await stands("Comment 2 of 5, row 3");
  expect(await page.getByRole("button", { name: "Nothing to code, here and in 1 with the same words" }).count()).toBe(1);
  await page.keyboard.press("0");
  await stands("Comment 3 of 5, row 4");
  await page.keyboard.press("PageUp");
  await stands("Comment 2 of 5, row 3: nothing to code");
  await page.keyboard.press("PageDown");
  await stands("Comment 3 of 5, row 4");
  await page.keyboard.press("0");
  await stands("Comment 4 of 5, row 5");
  await page.keyboard.type("knee stiff");
  await page.keyboard.press("Enter");
  await stands("Comment 4 of 5, row 5: 1 event coded");
  await page.getByLabel("or date").fill("2023-06-01");
  expect(await page.locator(".part.is-open .gist").innerText()).toBe("4 of 5 comments coded");
});

test("what was coded goes in as events; what wasn't stands as not collected", async () => {
  expect(await page.getByText("Gone on now, 1 comment stay").or(page.getByText("1 comment stays uncoded")).count()).toBe(1);
  await goOn(page);
  await workedThrough(page);
  await turnTo(page, "What will be kept");
  await page.getByRole("button", { name: /^Keep/ }).click();
  await page.getByText("Kept, as batch 1:").waitFor();
  const held = await inRegistry(registry.data, async (open) => {
    const all = [];
    for await (const one of open.held()) all.push(one);
    return all;
  });
  const events = held.flatMap(({ table, row }) => (table === "event" ? [row as EventRow] : []));
  const segments = held.flatMap(({ table, row }) => (table === "segment" ? [row as SegmentRow] : []));
  const coded = events.map(({ eventType, onsetDay, surgeryDay, handling }) => [
    eventType,
    (onsetDay ?? Number.NaN) - (surgeryDay ?? Number.NaN),
    handling,
  ]);
  expect(coded.sort()).toEqual([
    ["pin-site-infection", 21, "oral-drug"],
    // 4 April to 1 June
    ["stiffness", 58, null],
  ]);
  const looked = segments.map(({ bone, side, surgeryQuarter, eventsLookedFor }) => `${bone} ${side} ${surgeryQuarter} ${eventsLookedFor}`);
  expect(looked.sort()).toEqual([
    "femur left 1 fully",
    "femur left 2 null",
    "femur right 1 fully",
    "tibia left 1 fully",
    "tibia right 2 fully",
  ]);
});
