import { spawnSync } from "node:child_process";
import { describe, expect, test } from "vitest";
import { listMethods } from "@/lib/stats";
import { commandLine } from "../../command-line";

const ask = (args: readonly string[], input = "") => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [commandLine, "stats", ...args], { input, encoding: "utf8" });
  return { status, stdout, stderr };
};

test("npm run lengthbook is the command line that the tests run", () => {
  const { status, stdout } = spawnSync("npm", ["run", "-s", "lengthbook", "--", "stats", "--list"], { encoding: "utf8" });
  expect([status, stdout]).toEqual([0, ask(["--list"]).stdout]);
});

describe("stats on the command line", () => {
  test("--list --json: every method with its schema and example", () => {
    const { status, stdout } = ask(["--list", "--json"]);
    expect(status).toBe(0);
    expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(listMethods())));
  });

  test("--list for a person: one line a method", () => {
    const { stdout } = ask(["--list"]);
    for (const { id } of listMethods()) expect(stdout).toMatch(new RegExp(`^${id} `, "m"));
  });

  test("a method answers its record: Newcombe 1998 prints 0.0061 to 0.1718 for 1 of 29", () => {
    const { status, stdout, stderr } = ask(["wilson", "--json"], '{"x":1,"n":29}');
    const { lower, upper } = JSON.parse(stdout) as { lower: number; upper: number };
    expect([status, stderr, lower.toFixed(4), upper.toFixed(4)]).toEqual([0, "", "0.0061", "0.1718"]);
  });

  test.each([
    [["wilson"], '{"x":"Jane","n":29}', "stats wilson requires x to be a number, received a text\n"],
    [["wilson"], '{"x":30,"n":29}', "wilson requires"],
    [["wilson"], "x", "stats requires the input as JSON on standard input, received something else\n"],
    [["no-such"], "{}", "stats requires the id of a method, as stats --list gives them, received another word\n"],
    [[], "", "stats requires one method, or --list\n"],
  ])("%j with %s is refused: exit 2, the message on stderr, nothing on stdout", (args, input, message) => {
    const { status, stdout, stderr } = ask([...args, "--json"], input);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(message);
    expect(stderr).not.toContain("Jane");
  });
});
