import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { filesBelow } from "../files";
import { writtenPages } from "./pages";

const pages = ["README.md", "DEVELOPERS.md", "demo-data/README.md", ...filesBelow("docs", ".md")].filter((file) => existsSync(file));
const scripts = JSON.parse(readFileSync("package.json", "utf8")).scripts as Record<string, string>;

test.each(Object.entries(writtenPages))("%s is what the code says (npm run docs rewrites it)", (file, page) => {
  expect(readFileSync(file, "utf8")).toBe(page());
});

describe.each(pages)("%s", (file) => {
  const text = readFileSync(file, "utf8");

  test("names only commands that exist", () => {
    const named = [...text.matchAll(/npm run (?:-s )?([a-z][a-z:-]*)/g)].map(([, name]) => name as string);
    expect(named.filter((name) => !(name in scripts))).toEqual([]);
  });

  test("links only to what stands there", () => {
    const links = [...text.matchAll(/\]\((?!https?:|#|mailto:)([^)#\s]+)/g)].map(([, link]) => link as string);
    expect(links.filter((link) => !existsSync(path.join(path.dirname(file), link)))).toEqual([]);
  });
});
