import { getRandomValues } from "node:crypto";
import { readFileSync } from "node:fs";
import {
  type KeyRing,
  keyRing,
  makeRecoveryCode,
  makeUnitKey,
  openByPassphrase,
  passphraseMinimum,
  sealUnitKey,
  type UnitKeyRecord,
  WrongSecretError,
} from "@/lib/intake";
import type { Registry } from "@/lib/registry";
import { Refusal, UsageError } from "../arguments";

export type OpenedKey = {
  readonly ring: KeyRing;
  /** The sealed key of a first intake, to be kept with its batch. */
  readonly record: UnitKeyRecord | null;
  /** What to print once on stderr. */
  readonly recoveryCode: string | null;
};

const random = (n: number) => getRandomValues(new Uint8Array(n));

/**
 * The key of the registry, opened by the passphrase of the call; at the first intake a new one, sealed.
 * `--check-only` on a registry without a key needs no passphrase: the key it makes is thrown away.
 * @throws UsageError, Refusal before any row is read
 */
export async function openKeyFor(
  registry: Registry,
  passphraseFile: string | undefined,
  { checkOnly }: { readonly checkOnly: boolean },
): Promise<OpenedKey> {
  const held = await registry.unitKey();
  if (!held && checkOnly && passphraseFile === undefined) return { ring: keyRing(makeUnitKey(random)), record: null, recoveryCode: null };
  const passphrase = passphraseOf(passphraseFile);
  if (held) return { ring: keyRing(await opened(held, passphrase)), record: null, recoveryCode: null };
  if ([...passphrase].length < passphraseMinimum) throw new UsageError(`the passphrase requires at least ${passphraseMinimum} characters`);
  const key = makeUnitKey(random);
  const recoveryCode = makeRecoveryCode(random);
  const record = await sealUnitKey(key, { passphrase, recoveryCode, random });
  return { ring: keyRing(key), record, recoveryCode: recoveryWords(recoveryCode) };
}

async function opened(record: UnitKeyRecord, passphrase: string) {
  try {
    return await openByPassphrase(record, passphrase);
  } catch (error) {
    if (error instanceof WrongSecretError) throw new Refusal("The passphrase does not open this registry's key. Nothing was read.");
    throw error;
  }
}

/** The file's first line without its line end. */
function passphraseOf(file: string | undefined): string {
  if (file === undefined) throw new UsageError("intake requires --passphrase-file: the unit's passphrase on the file's first line");
  try {
    return (
      readFileSync(file, "utf8")
        .replace(/^\uFEFF/, "")
        .split(/\r?\n/, 1)[0] ?? ""
    );
  } catch {
    throw new UsageError("--passphrase-file requires a file that can be read");
  }
}

function recoveryWords(code: string): string {
  return [
    "The unit’s key was made. Its recovery code is shown this once:",
    "",
    `    ${code}`,
    "",
    "Print it and give it to two keepers. Without passphrase and code, old cases stay, and new files can’t be joined to them.",
    "",
  ].join("\n");
}
