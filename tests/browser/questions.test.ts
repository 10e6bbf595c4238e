import type { Page } from "playwright-core";
import { beforeAll, describe, expect, inject, test } from "vitest";
import { decimals, estimateText } from "@/lib/charts";
import { questions } from "../docs/questions";
import { oneBrowser } from "./browser";
import { lengthbook } from "./lengthbook";

const { open } = oneBrowser();

/** One thing that a person does: follow a link, change a word of a sentence, or tick several and ask. */
type Step =
  | { readonly follow: string | RegExp; readonly in?: "Pages" | "Outcomes" }
  | { readonly choose: string; readonly as: string }
  | { readonly tick: readonly string[] };

const outcomes: Step = { follow: "Outcomes", in: "Pages" };
const cohorts: Step = { follow: "Cohorts", in: "Pages" };
const place = (name: string): Step => ({ follow: name, in: "Outcomes" });

type Group = {
  readonly label: string;
  readonly segments: number;
  readonly n: number;
  readonly mean: Parameters<typeof estimateText>[0];
  readonly rate: { readonly events: number };
  readonly share: { readonly x: number; readonly n: number };
  readonly rows: readonly { readonly events: number }[];
};
type Answer = {
  readonly groups: readonly Group[];
  readonly differences: readonly { readonly estimate: number }[];
  readonly segments: number;
  readonly patients: number;
};

/** How each question is asked from Today, and what of the command line's answer must stand on the page. */
const asked: Readonly<Record<string, { readonly steps: readonly Step[]; readonly shown: (answer: Answer) => readonly string[] }>> = {
  F1: {
    steps: [cohorts, { follow: "antegrade-femoral-nails-one-year" }, { follow: "healing" }],
    shown: ({ groups: [all] }) => (all ? [estimateText(all.mean, "days/cm"), `${all.segments} segments`] : []),
  },
  F2: {
    steps: [outcomes, { choose: "Split by", as: "arrangement" }],
    shown: ({ groups }) => groups.flatMap(({ label, segments }) => [label, `${segments} segment`]),
  },
  F3: { steps: [outcomes, place("Curve")], shown: () => ["can’t heal so any more", "not healed at the last film"] },
  F4: {
    steps: [
      outcomes,
      place("Side by side"),
      { choose: "Field", as: "osteotomyOrientation" },
      { tick: ["age at surgery", "smoking", "osteotomy site"] },
    ],
    shown: ({ differences: [first] }) => [
      `adjusted for age at surgery, smoking and osteotomy site: ${decimals(first?.estimate ?? 0, 2)}`,
      "splits of this cohort were looked at",
    ],
  },
  F5: {
    steps: [outcomes, place("Complications"), { choose: "Scheme", as: "problem-obstacle" }],
    shown: ({ groups: [all] }) => [`${all?.rows.reduce((sum, { events }) => sum + events, 0)} events`, "Patients by their heaviest class"],
  },
  F6: {
    steps: [outcomes, place("Complications")],
    shown: ({ groups: [all] }) => [`${all?.rate.events}`, "Unplanned operations, by what they were for and when"],
  },
  F7: {
    steps: [cohorts, { follow: "short stature, both sides" }, { follow: "proportion" }],
    shown: () => ["have every reading measured", "Median stature gain"],
  },
  F8: {
    steps: [outcomes, place("Motion")],
    shown: ({ groups: [all] }) => [decimals(all?.mean.estimate ?? 0, 1), "Due, not seen"],
  },
  F9: {
    steps: [cohorts, { follow: "who may be used for research" }],
    shown: () => ["From the registry to the analysed", "permitted use not"],
  },
  K3: {
    steps: [outcomes, place("Plan"), { choose: "Tolerance", as: "10" }, { choose: "Split by", as: "auditYear" }],
    shown: ({ groups }) => groups.map(({ share }) => `${share.x} of ${share.n}`),
  },
  K4: {
    steps: [outcomes, place("Incidence"), { choose: "Split by", as: "device" }, { choose: "Pin-site infections", as: "left-out" }],
    shown: ({ groups: [nails] }) => [`${nails?.n} segments`],
  },
  K5: {
    steps: [outcomes, place("Complications"), { choose: "Split by", as: "releasePeronealNerve" }],
    shown: () => ["Resolved within 12 months", "Sensory deficit"],
  },
  K6: {
    steps: [cohorts, { follow: "femora" }, { follow: "side by side" }, { choose: "Second group", as: "monolateral-fixator" }],
    shown: ({ differences: [first] }) => [
      `days at equal gain, Magnetic nail over Monolateral fixator: ${decimals(first?.estimate ?? 0, 2)}`,
    ],
  },
  K7: {
    steps: [cohorts, { follow: "femora" }, { follow: "alignment" }, { choose: "Split by", as: "entry" }],
    shown: ({ groups: [first] }) => [decimals(first?.mean.estimate ?? 0, 1)],
  },
  K8: {
    steps: [cohorts, { follow: "short stature, both sides" }, { follow: "stature" }, { choose: "Measure", as: "stature-gain-error" }],
    shown: () => ["Stature gain less plan, on average"],
  },
  K9: {
    steps: [cohorts, { follow: "steel-nails" }, { follow: "complications" }],
    shown: ({ groups: [all] }) => [`${all?.segments} segments`],
  },
};

async function take(page: Page, step: Step): Promise<void> {
  const before = page.url();
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
  const { data } = inject("filled");
  const antegrade = questions.find(({ id }) => id === "F1")?.line.at(-1) ?? "{}";
  await lengthbook(data, ["cohort", "save", "antegrade-femoral-nails-one-year", antegrade]);
  await lengthbook(data, ["cohort", "save", "steel-nails", '{"nailMaterial":["stainless-steel"]}']);
});

describe("from Today in four steps or fewer", () => {
  test.each(questions)("$id: $question", async ({ id, line }) => {
    const { address, data } = inject("filled");
    const { steps, shown } = asked[id] ?? { steps: [], shown: () => [] };
    expect(steps.length).toBeGreaterThan(0);
    expect(steps.length).toBeLessThanOrEqual(4);
    const page = await open({ viewport: { width: 1280, height: 900 } });
    await page.goto(address);
    await page.waitForLoadState("networkidle");
    for (const step of steps) await take(page, step);
    const text = (await page.locator("main").innerText()).replaceAll("\u00a0", " ");
    const drawn = (await page.locator(".figure .wide svg").allTextContents()).join(" ");
    const answer: Answer = JSON.parse(await lengthbook(data, [...line, "--json"]));
    for (const words of shown(answer)) expect(`${text} ${drawn}`).toContain(words);
    await page.context().close();
  });

  test.each(questions.filter(({ page }) => page !== null))("$id has an address of its own", async ({ page: path }) => {
    const page = await open();
    const response = await page.goto(`${inject("filled").address}${path}`);
    expect(response?.status()).toBe(200);
    expect(await page.locator("main").innerText()).not.toContain("asks for something that can’t be answered");
    await page.context().close();
  });
});
