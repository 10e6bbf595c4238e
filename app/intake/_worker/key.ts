import {
  changePassphrase,
  keyRing,
  makeRecoveryCode,
  makeUnitKey,
  openByPassphrase,
  openByRecoveryCode,
  sealUnitKey,
  type UnitKey,
  type UnitKeyRecord,
  WrongSecretError,
} from "@/lib/intake";
import type { Asked } from "../_talk/messages";
import { doorOf } from "./door";
import { random, type Session } from "./session";

/** A first key, sealed and held in the tab until a commit brings the sealed form to the registry. */
export async function makeKey(session: Session, passphrase: string): Promise<{ recoveryCode: string }> {
  const key = makeUnitKey(random);
  const recoveryCode = makeRecoveryCode(random);
  const toKeep = await sealUnitKey(key, { passphrase, recoveryCode, random });
  takeKey(session, key, toKeep);
  return { recoveryCode };
}

/** Opens the registry's key. A wrong secret opens nothing, and what was prepared with an earlier key is forgotten. */
export async function openKey(session: Session, { by, secret }: Asked<"openKey">, signal: AbortSignal): Promise<{ opened: boolean }> {
  const { unitKey } = await doorOf(session, signal);
  if (!unitKey) throw new RangeError("openKey requires a registry that has a key, received one without");
  const key = await openedBy(unitKey, by, secret);
  if (key) takeKey(session, key, null);
  return { opened: key !== null };
}

async function openedBy(record: UnitKeyRecord, by: Asked<"openKey">["by"], secret: string): Promise<UnitKey | null> {
  try {
    return by === "passphrase" ? await openByPassphrase(record, secret) : await openByRecoveryCode(record, secret);
  } catch (error) {
    // what can't be a recovery code opens nothing either
    if (error instanceof WrongSecretError || error instanceof RangeError) return null;
    throw error;
  }
}

/** The open key under a new passphrase; the next commit brings the new seal. */
export async function sealAnew(session: Session, passphrase: string): Promise<{ sealed: true }> {
  const record = session.key?.toKeep ?? session.door?.unitKey;
  if (!session.key || !record) throw new RangeError("sealAnew requires an open key, received none");
  session.key = { ...session.key, toKeep: await changePassphrase(record, session.key.key, { passphrase, random }) };
  return { sealed: true };
}

function takeKey(session: Session, key: UnitKey, toKeep: UnitKeyRecord | null): void {
  session.key = { key, ring: keyRing(key), toKeep };
  session.prepared = null;
}
