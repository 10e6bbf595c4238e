import { readFileSync } from "node:fs";
import type { Settings } from "@/lib/registry";
import { parseWords, textOf, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { now } from "../now";
import { withRegistry } from "../registry-folder";

export const settings: Command = {
  words: "settings [--set F]",
  about: "the unit’s own lists; --set changes those that the file names, as a batch of its own",
  run: (args) =>
    withRegistry(async (registry) => {
      const { values, words } = parseWords(args, { set: { type: "string" } });
      if (words.length > 0) throw new UsageError("settings takes no words");
      const file = textOf(values, "set");
      // what the file doesn't name stays as it is
      if (file !== undefined) await save(registry.saveSettings, { ...(await registry.settings()), ...settingsIn(file) });
      const held = await registry.settings();
      return done(held, JSON.stringify(held, null, 2));
    }),
};

/** @throws UsageError naming the setting that can't be */
async function save(keep: (settings: Settings, options: { readonly at: string }) => Promise<unknown>, wanted: Settings): Promise<void> {
  try {
    await keep(wanted, { at: now() });
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    throw error;
  }
}

function settingsIn(file: string): Partial<Settings> {
  const read = readJson(file);
  if (typeof read !== "object" || read === null || Array.isArray(read))
    throw new UsageError("--set requires a file that holds an object of settings");
  // the registry checks the shape, setting by setting
  return read as Partial<Settings>;
}

function readJson(file: string): unknown {
  try {
    return JSON.parse(readFileSync(file, "utf8"));
  } catch {
    throw new UsageError("--set requires a file of JSON that can be read");
  }
}
