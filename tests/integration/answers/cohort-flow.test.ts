import { describe, expect, test } from "vitest";
import { ask, cohort, cohortFlow, cohortGroups, type MeasureAnswer, measureList } from "@/lib/answers";
import { groupWhere, type Where } from "@/lib/cohorts";
import { demoRegistry } from "../demo-registry";

const where: Where = { bone: ["femur", "tibia"], surgeryYear: { from: 2019 }, not: { device: ["circular-fixator"] } };

describe("the flow from the registry to the analysed", () => {
  test("its lines add up for every measure, and end at what the measure counts", async () => {
    await using registry = await demoRegistry();
    for (const { id, of } of measureList()) {
      if (id.startsWith("score-")) continue;
      const { lines, segments } = await cohortFlow(registry, { where, measure: id });
      let left = lines[0]?.segments ?? 0;
      for (const line of lines.slice(1)) {
        if (line.kind === "leaves") left -= line.segments;
        else expect([id, line.reason, line.segments]).toEqual([id, line.reason, left]);
      }
      expect(lines.find(({ reason }) => reason === "cohort")?.segments).toBe(segments);
      if (of === "segment" && !id.startsWith("complication")) {
        const [group] = (await ask(registry, { measure: id, where })).groups;
        const excluded = Object.values(group?.excluded ?? {}).reduce((sum, n) => sum + n, 0);
        expect([id, lines.at(-1)?.segments]).toEqual([id, segments - excluded]);
      }
    }
  });

  test("reasons are those that the measure gives, each with its number", async () => {
    await using registry = await demoRegistry();
    const { lines } = await cohortFlow(registry, { where, measure: "gain-error" });
    const [group] = ((await ask(registry, { measure: "gain-error", where })) as MeasureAnswer).groups;
    const after = lines.slice(lines.findIndex(({ reason }) => reason === "cohort") + 1, -1);
    expect(Object.fromEntries(after.map(({ reason, segments }) => [reason, segments]))).toEqual(group?.excluded);
  });

  test("the cohort in it is the cohort by itself", async () => {
    await using registry = await demoRegistry();
    const alone = await cohort(registry, { where });
    const flow = await cohortFlow(registry, { where, measure: "gain" });
    expect([flow.segments, flow.patients]).toEqual([alone.segments, alone.patients]);
  });
});

test("each group of a split, asked as a cohort, holds the same segments and patients", async () => {
  await using registry = await demoRegistry();
  for (const by of [["bone"], ["gainMm:30/50/80", "smoking"], ["canalVented"], ["surgeryYear"]]) {
    const groups = await cohortGroups(registry, { where, by });
    expect(groups.reduce((sum, { segments }) => sum + segments, 0)).toBe((await cohort(registry, { where })).segments);
    for (const { key, segments, patients } of groups) {
      const alone = await cohort(registry, { where: groupWhere(where, by, key) });
      expect([by, key, alone.segments, alone.patients]).toEqual([by, key, segments, patients]);
    }
  }
});
