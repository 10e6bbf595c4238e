import type { Page } from "playwright-core";
import { beforeAll, describe, expect, inject, test } from "vitest";
import { axeFaults, complaintsOf, type oneBrowser, overhang, shoot } from "./browser";

/** A page that is looked at: its picture's name, the registry behind it, and its address. */
export type LookedAt = { readonly page: string; readonly of: "filled" | "whole" | "empty" | "broken"; readonly path: string };
type Open = ReturnType<typeof oneBrowser>["open"];

const looks = [
  { look: "wide", viewport: { width: 1280, height: 800 }, colorScheme: "light" },
  { look: "phone", viewport: { width: 360, height: 740 }, colorScheme: "light" },
  { look: "dark", viewport: { width: 1280, height: 800 }, colorScheme: "dark" },
] as const;

/** Each page wide, on a phone and in the dark: no complaint, no fault of access, nothing beyond the window. */
export function lookOnScreens(open: Open, prefix: string, pages: readonly LookedAt[]): void {
  describe.each(looks)("$look", ({ look, viewport, colorScheme }) => {
    let page: Page;
    let complaints: string[];
    beforeAll(async () => {
      page = await open({ viewport, colorScheme, reducedMotion: "reduce" });
      complaints = complaintsOf(page);
    });

    test.each(pages)("$page: no complaint, no fault of access, nothing beyond the window", async ({ page: name, of, path }) => {
      complaints.length = 0;
      const response = await page.goto(inject(of).address + path);
      expect(response?.status()).toBe(200);
      await page.waitForLoadState("networkidle");
      await shoot(page, `${prefix}${name}-${look}`);
      expect(await axeFaults(page)).toEqual([]);
      expect(await overhang(page)).toBe(0);
      expect(complaints).toEqual([]);
    });
  });
}

/** Each page on paper: no controls, nothing beyond the sheet, and all that must stand there whole. */
export function lookOnPaper(open: Open, prefix: string, pages: readonly LookedAt[], whole: readonly string[]): void {
  describe("on paper", () => {
    let page: Page;
    beforeAll(async () => {
      page = await open({ viewport: { width: 673, height: 950 } });
      await page.emulateMedia({ media: "print" });
    });

    test.each(pages)("$page: no controls, the cautions whole", async ({ page: name, of, path }) => {
      await page.goto(inject(of).address + path);
      await shoot(page, `${prefix}${name}-print`);
      expect(await page.locator("button:visible, nav:visible").count()).toBe(0);
      const text = await page.locator("body").innerText();
      for (const caution of whole) expect(text).toContain(caution);
      expect(await overhang(page)).toBe(0);
    });
  });
}
