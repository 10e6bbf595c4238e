import { readFileSync } from "node:fs";
import { firstOf } from "@/lib/answers";
import { NotOnePatient, type Registry } from "@/lib/registry";
import { parseWords, Refusal, textOf, UsageError } from "../arguments";
import { type Command, done } from "../command";
import { openKeyFor } from "../intake/key";
import { now } from "../now";
import { withRegistry } from "../registry-folder";

const options = { "passphrase-file": { type: "string" }, "numbers-file": { type: "string" }, unit: { type: "string" } } as const;

export const join: Command = {
  words: "join --numbers-file F --passphrase-file F [--unit UNIT]",
  about: "read two local numbers (two lines of a file) as one patient’s, the first one’s; nothing is rewritten, and `part` undoes it",
  run: (args) =>
    withRegistry(async (registry) => {
      const { values, words } = parseWords(args, options);
      if (words.length > 0) throw new UsageError("join takes no words: the numbers stand in a file, where no list of processes shows them");
      const [first, second] = numbersOf(textOf(values, "numbers-file"));
      if (!(await registry.unitKey())) throw new Refusal("The registry has no key: nothing in it came from local numbers.");
      const { ring } = await openKeyFor(registry, textOf(values, "passphrase-file"), { checkOnly: false });
      const unit = textOf(values, "unit") ?? (await registry.settings()).units[0] ?? "unit-1";
      const [a, b] = await ring.persons(unit, [first, second]);
      const [into, person] = [await personNamed(registry, a?.person), await personNamed(registry, b?.person)];
      const days = (b?.shiftDays ?? 0) - (a?.shiftDays ?? 0);
      const { batch, contentHash } = await registry.join({ person, into, days, at: now() }).catch(refused);
      const stays = firstOf(await registry.joins(), person);
      return done(
        { batch, contentHash, case: stays, joined: person },
        `Case ${person} is read as case ${stays} from batch ${batch} on. Content ${contentHash}.`,
      );
    }),
};

/** Two numbers, a line each. None is repeated in a message. */
function numbersOf(file: string | undefined): readonly [string, string] {
  if (file === undefined) throw new UsageError("join requires --numbers-file: two local numbers, a line each");
  let text: string;
  try {
    text = readFileSync(file, "utf8");
  } catch {
    throw new UsageError("--numbers-file requires a file that can be read");
  }
  const lines = text
    .replace(/^\uFEFF/, "")
    .split(/\r?\n/)
    .map((line) => line.trim())
    .filter((line) => line !== "");
  const [first, second] = lines;
  if (lines.length !== 2 || !first || !second)
    throw new UsageError(`--numbers-file requires two numbers, a line each; the file has ${lines.length}`);
  return [first, second];
}

/** A person's entity by its pseudonym, a second number of a patient among them. @throws Refusal */
async function personNamed(registry: Registry, pseudonym: string | undefined): Promise<number> {
  const joined = (await registry.joins()).find(({ person }) => person.person === pseudonym);
  if (joined) return joined.person.entity;
  const { entity, columns } = await registry.frameAsOf(await registry.state(), "person", ["person"]);
  const column = columns.person;
  const label = column?.kind === "label" ? column.labels.indexOf(pseudonym ?? "") : -1;
  const row = column?.kind === "label" && label >= 0 ? column.values.indexOf(label) : -1;
  const found = entity[row];
  if (found === undefined) throw new Refusal("Under one of the two numbers nothing is held. Nothing was joined.");
  return found;
}

function refused(error: unknown): never {
  if (error instanceof NotOnePatient || error instanceof RangeError) throw new Refusal(`${error.message}. Nothing was joined.`);
  throw error;
}
