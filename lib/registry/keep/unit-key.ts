import { drizzle } from "drizzle-orm/better-sqlite3";
import type { Connection } from "@/db/open";
import { unitKey } from "@/db/schema";
import type { SealedKey, UnitKeyRecord } from "@/lib/intake";
import { UnitKeyRefused } from "../errors";

/** The unit's key in its two sealed forms; `null` before the first intake. */
export function unitKeyIn(db: Connection): UnitKeyRecord | null {
  const rows = drizzle(db).select().from(unitKey).all();
  const [byPassphrase, byRecovery] = (["passphrase", "recovery"] as const).map((form) => rows.find((row) => row.form === form));
  if (!byPassphrase || !byRecovery) return null;
  return { keyId: byPassphrase.keyId, byPassphrase: sealedOf(byPassphrase), byRecovery: sealedOf(byRecovery) };
}

function sealedOf({ iterations, salt, iv, sealed }: SealedKey): SealedKey {
  return { iterations, salt, iv, sealed };
}

/**
 * Keeps the key of a first intake, or the same key sealed again. The old seal is overwritten: a passphrase given up must open nothing.
 * @throws UnitKeyRefused when the registry has another key
 */
export function keepUnitKey(db: Connection, record: UnitKeyRecord): void {
  const held = unitKeyIn(db);
  if (held && held.keyId !== record.keyId) throw new UnitKeyRefused();
  for (const [form, sealed] of [
    ["passphrase", record.byPassphrase],
    ["recovery", record.byRecovery],
  ] as const) {
    const row = sealedOf(sealed);
    drizzle(db)
      .insert(unitKey)
      .values({ form, keyId: record.keyId, ...row })
      .onConflictDoUpdate({ target: unitKey.form, set: row })
      .run();
  }
}
