import { expect, test } from "vitest";
import { answerCache } from "@/lib/answers/question/cache";

/** Answers of so many rows, each time worked out being counted. */
function counting() {
  const worked: string[] = [];
  const cached = answerCache<{ readonly rows: number }>(({ rows }) => rows);
  const ask = (stamp: string, rows: number) =>
    cached(stamp, async () => {
      worked.push(stamp);
      return { rows };
    });
  return { worked, ask };
}

test("an answer is worked out once; two caches don't share a stamp", async () => {
  const [one, other] = [counting(), counting()];
  expect(await one.ask("a", 3)).toBe(await one.ask("a", 3));
  expect(await other.ask("a", 5)).toEqual({ rows: 5 });
  expect([one.worked, other.worked]).toEqual([["a"], ["a"]]);
});

test("above two million rows the least recently asked go, whichever cache holds them; the newest stays", async () => {
  const [one, other] = [counting(), counting()];
  await one.ask("old", 800_000);
  await one.ask("asked again", 800_000);
  await one.ask("old", 800_000);
  await other.ask("new", 800_000);
  await one.ask("old", 800_000);
  expect(one.worked).toEqual(["old", "asked again"]);
  await one.ask("asked again", 800_000);
  expect(one.worked).toEqual(["old", "asked again", "asked again"]);
  await other.ask("very large", 5_000_000);
  await other.ask("very large", 5_000_000);
  expect(other.worked).toEqual(["new", "very large"]);
});

test("of more than two hundred and fifty-six the least recently asked goes", async () => {
  const { worked, ask } = counting();
  for (let i = 0; i <= 256; i++) await ask(String(i), 0);
  await ask("1", 0);
  await ask("0", 0);
  expect(worked.slice(257)).toEqual(["0"]);
});

test("what failed is tried again", async () => {
  const cached = answerCache<number>();
  await expect(cached("a", () => Promise.reject(new RangeError("not now")))).rejects.toThrow("not now");
  expect(await cached("a", async () => 7)).toBe(7);
});
