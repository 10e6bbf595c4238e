import { cruise, type ICruiseResult, type IFlattenedRuleSet } from "dependency-cruiser";
import { expect, test } from "vitest";
import { walls } from "./walls.rules";

test("every room sees only its neighbours", { timeout: 60_000 }, async () => {
  const { output } = await cruise(["lib", "db", "app"], { ruleSet: walls as IFlattenedRuleSet, validate: true, ...walls.options });
  const { totalCruised, violations } = (output as ICruiseResult).summary;
  expect(violations.map((v) => `${v.rule.name}: ${v.from} -> ${v.to}`)).toEqual([]);
  // a parser that reads nothing reports no violation and looks like success
  expect(totalCruised).toBeGreaterThan(10);
});
