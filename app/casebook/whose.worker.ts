import { type KeyRing, keyRing, openByPassphrase, WrongSecretError } from "@/lib/intake";
import { eachOnce, numbersOfFile, numbersTyped } from "./_whose/numbers";
import type { WhoseAnswer, WhoseAsked, WhoseKeys } from "./_whose/talk";

declare const self: DedicatedWorkerGlobalScope;

type Known = { readonly case: number; readonly own: number };
type Session = { readonly ring: KeyRing; readonly known: ReadonlyMap<string, Known>; readonly listed: ReadonlySet<number> };
let session: Session | null = null;

self.onmessage = async ({ data }: MessageEvent<WhoseAsked>) => {
  self.postMessage(
    await answerTo(data).catch(
      (): WhoseAnswer => ({ failed: "Lengthbook’s server could not be reached. Start it again, then try once more." }),
    ),
  );
};

function answerTo(asked: WhoseAsked): Promise<WhoseAnswer> {
  if ("open" in asked) return open(asked.open);
  return "find" in asked ? find(asked.find) : join(asked.join);
}

/** Opens the key and takes the pseudonyms. Only the address of the page is asked with, never what was typed. */
async function open({ passphrase, search }: Extract<WhoseAsked, { open: unknown }>["open"]): Promise<WhoseAnswer> {
  const response = await fetch(`/casebook/keys${search}`, { cache: "no-store" });
  if (!response.ok) return { failed: "The casebook can’t show what this address asks." };
  const { unitKey, units, keys, listed }: WhoseKeys = await response.json();
  if (!unitKey) return { notOpened: "The registry has no key: nothing in it came from local numbers." };
  try {
    const ring = keyRing(await openByPassphrase(unitKey, passphrase));
    session = { ring, known: new Map(keys.map(([number, pseudonym, own]) => [pseudonym, { case: number, own }])), listed: new Set(listed) };
    return { opened: { units, cases: new Set(keys.map(([number]) => number)).size, listed: listed.length } };
  } catch (error) {
    if (error instanceof WrongSecretError)
      return { notOpened: "This passphrase does not open the registry’s key. Mind capitals and the keyboard’s language." };
    throw error;
  }
}

async function find({ unit, typed, file }: Extract<WhoseAsked, { find: unknown }>["find"]): Promise<WhoseAnswer> {
  if (!session) return { failed: "The key is shut. Open it first." };
  const read =
    file === null
      ? { numbers: numbersTyped(typed), from: "what was typed" }
      : await numbersOfFile(new Uint8Array(await file.arrayBuffer()), file.name);
  if ("trouble" in read) return { failed: read.trouble };
  const { ring, known, listed } = session;
  const once = eachOnce(read.numbers);
  const persons = await ring.persons(unit, [...once.keys()]);
  const found = [...once.values()].map((number, i) => {
    const { case: held, own } = known.get(persons[i]?.person ?? "") ?? { case: null, own: null };
    return { number, unit, case: held, own, listed: held !== null && listed.has(held) };
  });
  return { found, from: read.from };
}

/** Joins two numbers: what goes up is two cases and the difference of their lines, which says nothing of either number. */
async function join({ unit, first, second }: Extract<WhoseAsked, { join: unknown }>["join"]): Promise<WhoseAnswer> {
  if (!session) return { failed: "The key is shut. Open it first." };
  const { ring, known } = session;
  const [a, b] = await ring.persons(unit, [first, second]);
  const [into, person] = [known.get(a?.person ?? ""), known.get(b?.person ?? "")];
  if (!a || !b || !into || !person) return { failed: "One of the two isn’t held." };
  // a day of the second less its own shift, on the line of the first
  const body = JSON.stringify({ person: person.own, into: into.own, days: b.shiftDays - a.shiftDays });
  const response = await fetch("/casebook/join", { method: "POST", body, headers: { "Content-Type": "application/json" } });
  const reply: { readonly batch: number; readonly case: number } | { readonly message: string } = await response.json();
  return "message" in reply ? { failed: reply.message } : { joined: reply };
}
