import { expect, inject, test } from "vitest";
import { oneBrowser, shoot } from "./browser";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();
const hashNow = async () => {
  const batches = JSON.parse(await lengthbook(inject("filled").data, ["batches", "--json"]));
  return batches.at(-1).contentHash as string;
};

test("a batch is taken back in two steps, and taking that back brings it again", async () => {
  const page = await open({ viewport: { width: 1280, height: 800 } });
  const before = await hashNow();
  await page.goto(inject("filled").address);
  const newest = Number(/\d+/.exec(await page.locator(".batch strong").first().innerText())?.[0]);
  for (const batch of [newest, newest + 1]) {
    await page.locator("summary", { hasText: `Take batch ${batch} back` }).click();
    await shoot(page, "today-take-back-wide");
    await page.getByRole("button", { name: `Take batch ${batch} back` }).click();
    await page
      .getByRole("status")
      .filter({ hasText: `Batch ${batch} was taken back, as batch ${batch + 1}` })
      .waitFor();
  }
  expect(await hashNow()).toBe(before);
  await page.reload();
  expect(await page.locator(".batch strong").first().innerText()).toBe(`Batch ${newest + 2}`);
  await page.context().close();
});

test("a batch that a later one stands on is refused, and the later ones are named", async () => {
  const page = await open();
  await page.goto(inject("filled").address);
  await page.locator("summary", { hasText: "Take batch 1 back" }).click();
  await page.getByRole("button", { name: "Take batch 1 back" }).click();
  await page
    .getByRole("status")
    .filter({ hasText: /Batch 1 can’t be taken back yet: batches 2 and 3/ })
    .waitFor();
  await page.context().close();
});

test("the counts of Today add up to its segments", async () => {
  const page = await open();
  await page.goto(inject("filled").address);
  const numbers = (await page.locator("table.data td").allInnerTexts()).map(Number);
  const all = numbers.pop();
  expect(numbers.reduce((a, b) => a + b, 0)).toBe(all);
  expect(await page.locator(".answer").innerText()).toContain(`${all} segments`);
  await page.context().close();
});

test("an empty registry says what would stand there and offers the two ways on", async () => {
  const page = await open();
  await page.goto(inject("empty").address);
  const text = await page.locator("main").innerText();
  expect(text).toContain("Nothing has been brought in yet.");
  expect(text).toContain("Bring your first file");
  expect(text).toContain("npm run demo");
  await page.context().close();
});
