import type { RandomBytes } from "./random";
import { readRecoveryCode } from "./recovery-code";
import { openKey, type SealedKey, sealKey } from "./seal";
import { keyIdOf, type UnitKey } from "./unit-key";

/** What the registry keeps of the unit's key: the key twice sealed, and its name. */
export type UnitKeyRecord = { readonly keyId: string; readonly byPassphrase: SealedKey; readonly byRecovery: SealedKey };

type Sealing = { readonly random: RandomBytes; readonly iterations?: number };

/** Seals a key under a passphrase and under a recovery code. @throws RangeError for a short passphrase or what is no recovery code */
export async function sealUnitKey(
  key: UnitKey,
  { passphrase, recoveryCode, ...sealing }: Sealing & { readonly passphrase: string; readonly recoveryCode: string },
): Promise<UnitKeyRecord> {
  const byPassphrase = await sealKey(key, passphrase, sealing);
  return { keyId: await keyIdOf(key), byPassphrase, byRecovery: await sealKey(key, readRecoveryCode(recoveryCode), sealing) };
}

/** Opens by passphrase. @throws WrongSecretError; Error when the record's name is not that of the key */
export function openByPassphrase(record: UnitKeyRecord, passphrase: string): Promise<UnitKey> {
  return openNamed(record, record.byPassphrase, passphrase);
}

/** Opens by the printed recovery code, as typed. @throws RangeError when it can't be one; WrongSecretError */
export async function openByRecoveryCode(record: UnitKeyRecord, typed: string): Promise<UnitKey> {
  return openNamed(record, record.byRecovery, readRecoveryCode(typed));
}

/** The same key under a new passphrase: old cases stay joined. The recovery code stays. */
export async function changePassphrase(
  record: UnitKeyRecord,
  key: UnitKey,
  { passphrase, ...sealing }: Sealing & { readonly passphrase: string },
): Promise<UnitKeyRecord> {
  await requireName(record, key);
  return { ...record, byPassphrase: await sealKey(key, passphrase, sealing) };
}

async function openNamed(record: UnitKeyRecord, sealed: SealedKey, secret: string): Promise<UnitKey> {
  const key = await openKey(sealed, secret);
  await requireName(record, key);
  return key;
}

// a record put together from two registries would give pseudonyms that join nothing
async function requireName(record: UnitKeyRecord, key: UnitKey): Promise<void> {
  const keyId = await keyIdOf(key);
  if (keyId !== record.keyId) throw new Error(`the unit's key record requires key ${record.keyId}, received ${keyId}`);
}
