import { readFileSync } from "node:fs";
import path from "node:path";
import type { Page } from "playwright-core";

const root = path.resolve(import.meta.dirname, "../../..");
export const demoFile = (name: string): string => path.join(root, "demo-data", name);
export const passphrase = "invented unit, open key";
export const demoPassphrase = readFileSync(demoFile("passphrase.txt"), "utf8").split(/\r?\n/, 1)[0] ?? "";

/** A file as a person would choose it: from the disk, or made here. */
export type Brought = string | { readonly name: string; readonly mimeType: string; readonly buffer: Buffer };

export function textFile(name: string, text: string | Buffer): Brought {
  return { name, mimeType: "text/csv", buffer: Buffer.from(text) };
}

export async function bring(page: Page, ...files: Brought[]): Promise<void> {
  await page.locator("#files").setInputFiles(files as Parameters<ReturnType<Page["locator"]>["setInputFiles"]>[0]);
}

/** Goes on, and waits until another part stands open and has heard what it asks the registry first. */
export async function goOn(page: Page): Promise<void> {
  const before = await openPart(page);
  await page.getByRole("button", { name: /^Go on:/ }).click();
  await page.locator(".part.is-open h2").filter({ hasNotText: before }).waitFor();
  await page.locator(".part.is-open").filter({ hasNotText: "Asking the registry" }).waitFor();
}

export async function openKey(page: Page, secret = passphrase): Promise<void> {
  await page.getByLabel("Passphrase of the unit’s key").fill(secret);
  await page.getByRole("button", { name: "Open the key" }).click();
}

/** Makes the first key and puts its recovery code away. @returns the code as shown */
export async function makeKey(page: Page, secret = passphrase): Promise<string> {
  await page.getByLabel("Passphrase", { exact: true }).fill(secret);
  await page.getByLabel("The same once more").fill(secret);
  await page.getByRole("button", { name: "Make the key" }).click();
  const code = await page.locator("code.recovery").innerText();
  await page.getByLabel("First keeper, by role").selectOption("Data steward");
  await page.getByLabel("Second keeper, by role").selectOption("Head of the unit");
  await page.getByRole("button", { name: "It is put away: go on" }).click();
  return code;
}

export async function loadMapping(page: Page, mapping: Brought): Promise<void> {
  await page.getByLabel("Load a mapping").setInputFiles(mapping as string);
}

/** Waits until what was said last has been worked through. */
export async function workedThrough(page: Page): Promise<void> {
  await page.locator('.letter[aria-busy="false"]').waitFor();
}

/** Goes to a part of the letter by its heading. */
export async function turnTo(page: Page, part: string): Promise<void> {
  await page.getByRole("heading", { name: part }).getByRole("link").click();
}

export async function openPart(page: Page): Promise<string> {
  return (await page.locator(".part.is-open h2").innerText()).trim();
}
