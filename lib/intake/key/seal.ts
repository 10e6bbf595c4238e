import { fromBase64, toBase64 } from "./base64";
import { deriveBits, iterationsDefault, requirePassphrase } from "./passphrase";
import type { RandomBytes } from "./random";
import { subtle } from "./subtle";
import { type UnitKey, unitKeyOf } from "./unit-key";

const saltBytes = 16;
// 96 bits: the length for which AES-GCM is defined without hashing (NIST SP 800-38D §8.2)
const ivBytes = 12;
const purpose = new TextEncoder().encode("lengthbook/seal/1");

/** A sealed form of the unit's key: base64 parts, no secret among them. */
export type SealedKey = { readonly iterations: number; readonly salt: string; readonly iv: string; readonly sealed: string };

/** The secret does not open this key. */
export class WrongSecretError extends Error {
  override readonly name = "WrongSecretError";
  constructor() {
    super("the passphrase or recovery code does not open this registry's key");
  }
}

/**
 * Seals a key with AES-256-GCM under PBKDF2-SHA-256 of a secret.
 * @throws RangeError when the secret has fewer than 15 characters
 */
export async function sealKey(
  key: UnitKey,
  secret: string,
  { iterations = iterationsDefault, random }: { readonly iterations?: number; readonly random: RandomBytes },
): Promise<SealedKey> {
  requirePassphrase(secret);
  const salt = random(saltBytes);
  const iv = random(ivBytes);
  const wrapping = await wrappingKey(secret, salt, iterations, "encrypt");
  const sealed = await subtle().encrypt({ name: "AES-GCM", iv, additionalData: purpose }, wrapping, key.bytes);
  return { iterations, salt: toBase64(salt), iv: toBase64(iv), sealed: toBase64(new Uint8Array(sealed)) };
}

/**
 * Opens a sealed key.
 * @throws WrongSecretError when the secret is not the one, or the record was altered (the two can't be told apart)
 */
export async function openKey({ iterations, salt, iv, sealed }: SealedKey, secret: string): Promise<UnitKey> {
  const wrapping = await wrappingKey(secret, fromBase64(salt), iterations, "decrypt");
  const algorithm = { name: "AES-GCM", iv: fromBase64(iv), additionalData: purpose };
  const opened = await subtle()
    .decrypt(algorithm, wrapping, fromBase64(sealed))
    .catch(() => {
      throw new WrongSecretError();
    });
  return unitKeyOf(new Uint8Array(opened));
}

async function wrappingKey(secret: string, salt: Uint8Array<ArrayBuffer>, iterations: number, use: "encrypt" | "decrypt") {
  const bits = await deriveBits(secret, salt, iterations, 256);
  return subtle().importKey("raw", bits, "AES-GCM", false, [use]);
}
