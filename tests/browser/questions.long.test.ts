import type { Page } from "playwright-core";
import { beforeAll, describe, expect, inject, test } from "vitest";
import type { MatrixRow } from "@/lib/answers";
import { decimals, estimateText, percentText } from "@/lib/charts";
import { questions, type Step } from "../docs/questions";
import { oneBrowser } from "./browser";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();

type Group = {
  readonly label: string;
  readonly segments: number;
  readonly n: number;
  readonly censored: number;
  readonly ended: number;
  readonly rescued: number;
  readonly deviation: number;
  readonly mean: Limits;
  readonly plain: Limits;
  readonly median: Limits;
  readonly rate: { readonly events: number; readonly estimate: number };
  readonly share: { readonly x: number; readonly n: number };
  readonly curve: readonly { readonly day: number; readonly estimate: number }[];
  readonly implants: { readonly out: number; readonly notOut: number; readonly lastFilm: { readonly median: number } };
  readonly rows: readonly MatrixRow[];
};
type Limits = Parameters<typeof estimateText>[0];
type Answer = {
  readonly groups: readonly Group[];
  readonly differences: readonly { readonly estimate: number }[];
  readonly segments: number;
  readonly patients: number;
};

const phases = ["in-theatre", "latency", "distraction", "consolidation", "after", "not recorded"];

/** A row of *When events began, and what came of them*. */
function factsRow({ type, events, byPhase, operations, resolvedWithin12Months }: MatrixRow, label: string): string {
  const words = type.replaceAll("-", " ");
  const inPhases = phases.map((phase) => byPhase[phase] ?? 0);
  return [words.charAt(0).toUpperCase() + words.slice(1), label, events, ...inPhases, operations, resolvedWithin12Months].join("\t");
}

const byYear = ({ curve }: Group) => curve.filter(({ day }) => day <= 365).at(-1)?.estimate ?? 0;
const one = (value: number | null | undefined, digits = 1) => decimals(value ?? Number.NaN, digits);

/** What of the command line's answer must stand on the way to the answer or on its page. */
const shown: Readonly<Record<string, (answer: Answer) => readonly string[]>> = {
  F1: ({ groups: [all] }) =>
    all
      ? [estimateText(all.mean, "days/cm"), `${all.segments} segments`, `\t${one(all.deviation)}\t`, `\t${one(all.median.estimate)}\n`]
      : [],
  F2: ({ groups }) =>
    groups.flatMap(({ label, segments, plain }) => [
      label,
      `${segments} segment`,
      ...(plain.lower === null ? [] : [`${one(plain.lower)} to ${one(plain.upper)}`]),
    ]),
  F3: ({ groups: [all] }) => [
    `${all?.rescued} of them after further bone surgery`,
    `${all?.censored} not healed at the last film`,
    `${all?.ended} can’t heal so any more`,
    "half had healed by",
  ],
  F4: ({ differences: [first] }) => [
    `adjusted for age at surgery, smoking and osteotomy site: ${one(first?.estimate, 2)}`,
    "splits of this cohort were looked at",
  ],
  F5: ({ groups: [all] }) => [
    `${all?.rows.reduce((sum, { events }) => sum + events, 0)} events`,
    "Patients by their heaviest class (problems, obstacles and complications)",
    "Over each denominator",
  ],
  F6: ({ groups: [all] }) => [
    `\t${all?.rate.events}\t`,
    `\t${one(all?.rate.estimate, 2)}\t`,
    "Unplanned operations, by what they were for and when",
  ],
  F7: ({ groups: [all] }) => [one(all?.mean.estimate, 3), "every reading measured", "Median stature gain", "Sitting height"],
  F8: ({ groups: [all] }) => [`Knee flexion\t6 months\t${one(all?.mean.estimate)}`, "Ankle dorsiflexion\t12 months", "Due, not seen"],
  F9: ({ segments, patients }) => [
    `${segments} segments in ${patients} patients`,
    "From the registry to the analysed",
    "permitted use not",
    "Lost, moved or withdrawn",
  ],
  K3: ({ groups }) => [...groups.map(({ share }) => `${share.x} of ${share.n}`), "stopped early:"],
  K4: ({ groups }) => [
    ...groups.filter(({ curve }) => curve.length > 0).map((group) => `${percentText(byYear(group))} %`),
    "Pin-site infections counted",
    "a planned implant removal ends the time at risk",
  ],
  K5: ({ groups }) =>
    groups.flatMap(({ label, rows }) =>
      rows.filter(({ type }) => type === "peroneal-palsy" || type === "sensory-deficit").map((row) => factsRow(row, label)),
    ),
  K6: ({ differences: [first], groups: [a, b] }) => [
    `days at equal gain, Magnetic nail over Monolateral fixator: ${one(first?.estimate, 2)}`,
    `the unhealed, ${a?.censored} of`,
    `and ${b?.censored} of`,
  ],
  K7: ({ groups: [first] }) => [one(first?.mean.estimate), "How often it ended outside the limits", "Axis more than 10 mm outside"],
  K8: ({ groups: [all] }) => [
    `Stature gain less plan, on average: ${one(all?.mean.estimate)}`,
    "Plan, legs, proportions and function of the same patients",
  ],
  K9: ({ groups: [all] }) => [
    `${all?.segments} segments`,
    `\t${all?.implants.out}\t${all?.implants.notOut}\t`,
    `\t${all?.implants.lastFilm.median}\t`,
    ...(all?.rows ?? [])
      .filter(({ type }) => type === "osteolysis" || type === "corrosion")
      .map(({ type }) => type.charAt(0).toUpperCase() + type.slice(1)),
  ],
};

async function take(page: Page, step: Step): Promise<void> {
  const before = page.url();
  if ("unfold" in step) return page.locator("summary", { hasText: step.unfold }).click();
  if ("follow" in step) {
    const from = step.in ? page.getByRole("navigation", { name: step.in, exact: true }) : page.locator("main");
    await from.getByRole("link", { name: step.follow, exact: true }).first().click();
  } else if ("choose" in step) await page.getByLabel(step.choose, { exact: true }).selectOption(step.as);
  else {
    for (const label of step.tick) await page.getByLabel(label, { exact: true }).check();
    await page.getByRole("button", { name: "Ask" }).click();
  }
  await page.waitForURL((url) => url.href !== before);
  await page.waitForLoadState("networkidle");
}

beforeAll(async () => {
  const { data } = inject("whole");
  const antegrade = questions.find(({ id }) => id === "F1")?.line.at(-1) ?? "{}";
  await lengthbook(data, ["cohort", "save", "antegrade-femoral-nails-one-year", antegrade]);
  await lengthbook(data, ["cohort", "save", "steel-nails", '{"nailMaterial":["stainless-steel"]}']);
});

describe("from Today in four steps or fewer", () => {
  test.each(questions)("$id: $question", async ({ id, line, steps }) => {
    const { address, data } = inject("whole");
    expect(steps.length).toBeLessThanOrEqual(4);
    const page = await open({ viewport: { width: 1280, height: 900 } });
    await page.goto(address);
    await page.waitForLoadState("networkidle");
    const read: string[] = [];
    for (const step of steps) {
      await take(page, step);
      read.push((await page.locator("main").innerText()).replaceAll("\u00a0", " "));
      read.push(...(await page.locator(".figure .wide svg").allTextContents()));
    }
    const answer: Answer = JSON.parse(await lengthbook(data, [...line, "--json"]));
    const words = shown[id]?.(answer) ?? [];
    expect(words.length).toBeGreaterThan(0);
    const text = read.join("\n");
    expect(words.filter((one) => !text.includes(one))).toEqual([]);
    await page.context().close();
  });

  test.each(questions.filter(({ page }) => page !== null))("$id has an address of its own", async ({ page: path }) => {
    const page = await open();
    const response = await page.goto(`${inject("whole").address}${path}`);
    expect(response?.status()).toBe(200);
    expect(await page.locator("main").innerText()).not.toContain("asks for something that can’t be answered");
    await page.context().close();
  });
});
