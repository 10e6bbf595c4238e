import { expect, test } from "vitest";
import { demoFiles } from "../../../demo-data/files";
import { bytesOf } from "./read";

test.each(demoFiles())("$name stands in the folder as it is generated", ({ name, bytes }) => {
  expect(Buffer.compare(bytesOf(name), Buffer.from(bytes))).toBe(0);
});

test("generated twice, every byte is the same", () => {
  const [once, again] = [demoFiles(), demoFiles()];
  expect(again.map(({ bytes }) => Buffer.from(bytes).toString("base64"))).toEqual(
    once.map(({ bytes }) => Buffer.from(bytes).toString("base64")),
  );
});
