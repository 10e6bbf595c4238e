import { cohort as ask, type CohortAnswer } from "@/lib/answers";
import { canonicalWhere, describeWhere, parseWhere } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import { parseWords, UsageError } from "../arguments";
import { cohortNamed } from "../cohort-words";
import { type Answer, type Command, done } from "../command";
import { withRegistry } from "../registry-folder";
import { tableText } from "../table-text";

export const cohort: Command = {
  words: "cohort list | save NAME JSON | show NAME|JSON",
  about: "saved cohorts; who is in one, and what each of its conditions leaves out",
  run: (args) =>
    withRegistry(async (registry) => {
      const { words } = parseWords(args, {});
      const [verb, ...rest] = words;
      if (verb === "list" && rest.length === 0) return listed(registry);
      if (verb === "save" && rest.length === 2) return saved(registry, rest[0] ?? "", rest[1] ?? "");
      if (verb === "show" && rest.length === 1) return shown(registry, rest[0] ?? "");
      throw new UsageError("cohort requires list, save NAME JSON, or show NAME|JSON");
    }),
};

async function listed(registry: Registry): Promise<Answer> {
  const list = (await registry.cohorts()).map(({ name, where }) => ({ name, where: JSON.parse(where) as unknown }));
  return done(
    list,
    list.length === 0
      ? "No cohort is saved."
      : tableText(
          ["name", "who"],
          list.map(({ name, where }) => [name, describeWhere(parseWhere(JSON.stringify(where)))]),
        ),
  );
}

async function saved(registry: Registry, name: string, json: string): Promise<Answer> {
  const where = canonicalWhere(await cohortNamed(registry, json));
  try {
    await registry.saveCohort({ name, where });
  } catch (error) {
    if (error instanceof RangeError) throw new UsageError(error.message);
    throw error;
  }
  return done({ name, where: JSON.parse(where) as unknown }, `Saved as ${name}.`);
}

async function shown(registry: Registry, text: string): Promise<Answer> {
  const answer: CohortAnswer = await ask(registry, { where: await cohortNamed(registry, text) });
  const rows = answer.flow.map(({ words, segments, patients }) => [words, segments, patients]);
  return done(answer, `${answer.words}\n\n${tableText(["step", "segments", "patients"], rows)}`);
}
