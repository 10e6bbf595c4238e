import { expect, test } from "vitest";
import { type CompareAnswer, compare } from "@/lib/answers";
import { emptyRegistry } from "../demo-registry";
import { aFemur, aPerson, rowsOf } from "./made";

const between = { field: "device", values: ["magnetic-nail", "monolateral-fixator"], where: {} } as const;

/** Ten patients with nails beside some with fixators, two bones each, of ages that differ. */
async function besideTenNails(fixators: number): Promise<CompareAnswer> {
  await using registry = await emptyRegistry();
  const numbers = Array.from({ length: 10 + fixators }, (_, i) => i);
  const segment = numbers.flatMap((i) =>
    (["left", "right"] as const).map((side) =>
      aFemur(i, { side, device: i < 10 ? "magnetic-nail" : "monolateral-fixator", gainMm: 50, ageAtSurgeryYears: 20 + (i % 7) }),
    ),
  );
  await registry.commit(rowsOf({ person: numbers.map((i) => aPerson(i)), segment }), { at: "2021-01-01T00:00:00Z" });
  return await compare(registry, { measure: "gain", between });
}

test.each([
  [1, false],
  [2, false],
  [3, true],
])("beside %i patients, whatever their bones, whether a standardised difference of age is given: %s", async (fixators, given) => {
  const age = (await besideTenNails(fixators)).balance.find(({ field }) => field === "ageAtSurgeryYears");
  expect(age?.recorded).toEqual([20, 2 * fixators]);
  expect(typeof age?.smd === "number").toBe(given);
});
