import { existsSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { filesBelow } from "../files";

/** Rooms whose docstrings hold examples that can be run with what stands in the file itself. */
const rooms = ["codebook", "stats", "outcomes", "cohorts", "charts", "intake", "yardsticks", "disclosure"].map((room) => `lib/${room}`);
const files = rooms.filter((room) => existsSync(room)).flatMap((room) => filesBelow(room, ".ts"));

const examples = files.flatMap((file) =>
  [...readFileSync(file, "utf8").matchAll(/@example (.+?) \/\/ => (.+)/g)].map(([, call, claim]) => ({
    file,
    call: call as string,
    claim: (claim as string).replace(/\s*\*\/\s*$/, ""),
  })),
);

test("there are examples to run", () => {
  expect(examples.length).toBeGreaterThan(3);
});

test.each(examples)("$file: $call", async ({ file, call, claim }) => {
  const room = (await import(`../../${file}`)) as Record<string, unknown>;
  const run = async (code: string) => new Function(...Object.keys(room), `return (${code})`)(...Object.values(room)) as unknown;
  expect(await run(call)).toEqual(await run(claim));
});
