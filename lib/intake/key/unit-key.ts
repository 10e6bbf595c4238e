import { base32 } from "./base32";
import { hmacSha256, importHmacKey } from "./hmac";
import type { RandomBytes } from "./random";

const keyBytes = 32;

/** The unit's key: 256 random bits. It lives in the tab or the command line's process, never in the registry. */
export type UnitKey = { readonly bytes: Uint8Array<ArrayBuffer> };

/** A new key. @throws RangeError when the source gives other than 32 bytes */
export function makeUnitKey(random: RandomBytes): UnitKey {
  return unitKeyOf(random(keyBytes));
}

/** A key of given bytes. @throws RangeError unless they are 32 */
export function unitKeyOf(bytes: Uint8Array<ArrayBuffer>): UnitKey {
  if (bytes.length !== keyBytes) throw new RangeError(`unitKeyOf requires ${keyBytes} bytes, received ${bytes.length}`);
  return { bytes };
}

/** The name of a key, 12 characters: tells two keys apart and says nothing of either. */
export async function keyIdOf(key: UnitKey): Promise<string> {
  return base32(await hmacSha256(await importHmacKey(key), "lengthbook/key-id/1"), 12);
}
