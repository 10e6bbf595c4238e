import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { commands } from "@/lib/cli/commands";
import { filesBelow } from "../files";
import { commandsSection, shapes } from "./commands";

const folder = "lib/cli/commands";

test("every command of the command line has its usage and the shape of its answer in docs/ids.md", () => {
  const names = filesBelow(folder, ".ts").map((file) => file.slice(folder.length + 1, -".ts".length));
  expect(Object.keys(commands).sort()).toEqual(names.filter((name) => name !== "index").sort());
  expect(Object.keys(shapes).sort()).toEqual(Object.keys(commands).sort());
  const section = commandsSection();
  for (const { words } of Object.values(commands)) expect(section).toContain(words);
  expect(readFileSync("docs/ids.md", "utf8")).toContain(section);
});

test.each(Object.keys(commands))("the usage of %s names each option that it takes", (name) => {
  const source = readFileSync(`${folder}/${name}.ts`, "utf8");
  const options = [...source.matchAll(/"?([a-z][a-z-]*)"?: \{ type: "(?:string|boolean)"/g)].map(([, option]) => `--${option}`);
  expect(options.filter((option) => !commands[name]?.words.includes(option))).toEqual([]);
});
