import { beforeAll, expect, test } from "vitest";
import { questions } from "../../docs/questions";
import { aUnit, lengthbook } from "./run";

/** Each line of docs/questions.md, run as it stands on the demo's cases. */
const unit = aUnit();

beforeAll(() => {
  const secret = ["--passphrase-file", unit.secret, "--dates", "ymd"];
  for (const file of ["seven-years.csv", "tables/visits.csv"]) {
    const { code, err } = lengthbook(unit.data, "intake", `demo-data/${file}`, ...secret);
    if (code !== 0) throw new Error(err);
  }
}, 240_000);

test.each(questions)("$id: $question", ({ line }) => {
  const { code, json, err } = lengthbook(unit.data, ...line, "--json");
  expect(code, err).toBe(0);
  const answer = json as { groups?: { segments: number }[]; flow?: { segments: number }[]; stamp?: string };
  const counted = answer.groups ?? answer.flow ?? [];
  expect(counted.length).toBeGreaterThan(0);
  expect(counted[0]?.segments).toBeGreaterThan(0);
  if (line[0] !== "cohort") expect(answer.stamp).toMatch(/^[0-9a-f]{12}$/);
});
