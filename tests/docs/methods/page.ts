import { readFileSync } from "node:fs";
import { listMethods, thresholds } from "@/lib/stats";
import { agreement } from "./agreement";
import type { Comparison } from "./comparison";
import { means } from "./means";
import { shares } from "./shares";
import { time } from "./time";

export const comparisons: readonly Comparison[] = [...shares, ...means, ...agreement, ...time];

/** docs/methods.md: what each method is, and its answers beside those from outside. */
export function methodsPage(): string {
  const parts = listMethods().map(({ id, title }) => sectionOf(id, title));
  return `${[opening, ...parts, judgement()].join("\n\n")}\n`;
}

const opening = `# Methods

Written by \`npm run docs\` from \`lib/stats\` and the answers kept in \`tests/external\`; a test compares it byte by byte.

Each method is a file of \`lib/stats\` and can be asked by its name: \`npm run -s lengthbook -- stats METHOD < input.json\`.
Below each stand our answers beside those from outside. *R* is R 4.2 with clubSandwich, sandwich, survival, cmprsk, nlme and epitools;
its scripts are kept beside the answers, run again by the tests where R is installed, and a changed script fails a test.
A printed figure names its publication and how it was read; the others are full-precision answers of R to the same question.
The difference is relative to theirs and rounded up to a power of ten; of a list the number furthest apart is shown. A figure printed with few digits can't be met closer than its digits.`;

function sectionOf(id: string, title: string): string {
  const rows = comparisons.filter(({ method }) => method === id).map(rowOf);
  const head = "| check | answer | ours | theirs | difference | source |\n|---|---|---|---|---|---|";
  const table =
    rows.length > 0 ? `${head}\n${rows.join("\n")}` : "No answer from outside: tested by identities and by hand (tests/unit/stats).";
  return `## ${id}\n\n${title}. ${aboutOf(id)}\n\n${table}`;
}

function rowOf(one: Comparison): string {
  const { check, field, source } = one;
  const { place, ours, theirs, of } = worstOf(one.ours, one.theirs);
  const named = of > 1 ? `${field}, ${place + 1} of ${of}` : field;
  return `| ${check} | ${named} | ${shown(ours)} | ${shown(theirs)} | ${distance(ours, theirs)} | ${source.replaceAll("|", "\\|")} |`;
}

/** Of lists the place where they are furthest apart stands for all. */
function worstOf(ours: unknown, theirs: unknown) {
  const [left, right] = [[ours].flat(3), [theirs].flat(3)];
  let place = 0;
  right.forEach((their, i) => {
    if (apart(left[i], their) > Math.max(1e-12, apart(left[place], right[place]))) place = i;
  });
  return { place, ours: left[place], theirs: right[place], of: right.length };
}

/** Ten digits: the last ones differ between machines. */
function shown(value: unknown): string {
  if (typeof value === "number") return String(Number(value.toPrecision(10)));
  return value === null || value === undefined ? "not reached" : String(value);
}

function distance(ours: unknown, theirs: unknown): string {
  const found = apart(ours, theirs);
  return found < 1e-12 ? "< 1e-12" : `≤ 1e${Math.ceil(Math.log10(found) - 1e-6)}`;
}

/** Relative to theirs; infinite when one was reached and the other wasn't. */
export function apart(ours: unknown, theirs: unknown): number {
  if (typeof ours === "number" && typeof theirs === "number") return Math.abs(ours - theirs) / Math.max(1e-10, Math.abs(theirs));
  return ours === theirs || (ours == null && theirs == null) ? 0 : Number.POSITIVE_INFINITY;
}

/** The method's own docstring up to its first tag. */
function aboutOf(id: string): string {
  const text = readFileSync(`lib/stats/${id}.ts`, "utf8");
  const name = id.replace(/-(\w)/g, (_, letter: string) => letter.toUpperCase());
  const before = text.slice(0, text.indexOf(`export function ${name}(`));
  const block = before.slice(before.lastIndexOf("/**") + 3, before.lastIndexOf("*/"));
  const lines = block.split("\n").map((line) => line.replace(/^\s*\*? ?/, "").trim());
  const end = lines.findIndex((line) => line.startsWith("@"));
  return lines
    .slice(0, end < 0 ? undefined : end)
    .filter(Boolean)
    .join(" ")
    .replaceAll("<", "&lt;");
}

function judgement(): string {
  const text = readFileSync("lib/stats/thresholds.ts", "utf8");
  const rows = [...text.matchAll(/\/\*\* (.+?) \*\/\n {2}(\w+):/g)].map(([, what, name]) => {
    return `| ${name} | ${thresholds[name as keyof typeof thresholds]} | ${what} |`;
  });
  return `## Judgement\n\nNumbers that are no mathematics: common practice for samples of a single unit, no source.\n\n| threshold | value | what it does |\n|---|---|---|\n${rows.join("\n")}`;
}
