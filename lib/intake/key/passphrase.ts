import { subtle } from "./subtle";

/** Shortest passphrase taken, in characters. */
export const passphraseMinimum = 15;
/** PBKDF2-HMAC-SHA-256 rounds (OWASP Password Storage Cheat Sheet, 2026). */
export const iterationsDefault = 600_000;
/** Above this a damaged record would hold a tab for minutes. */
const iterationsMost = 20_000_000;

/** Throws unless the secret is long enough. The secret is never repeated. */
export function requirePassphrase(secret: string): void {
  const length = [...secret.normalize("NFKC")].length;
  if (length < passphraseMinimum)
    throw new RangeError(`sealKey requires a passphrase of at least ${passphraseMinimum} characters, received ${length}`);
}

/**
 * Bits from a secret by PBKDF2-HMAC-SHA-256 (RFC 8018; vectors: RFC 7914 §11). The secret is taken as UTF-8 of its NFKC form, so that
 * the same keys on another keyboard or system give the same bytes.
 */
export async function deriveBits(secret: string, salt: Uint8Array<ArrayBuffer>, iterations: number, bits: number): Promise<ArrayBuffer> {
  if (!Number.isInteger(iterations) || iterations < 1 || iterations > iterationsMost)
    throw new RangeError(`deriveBits requires 1 to ${iterationsMost} iterations, received ${iterations}`);
  const key = await subtle().importKey("raw", new TextEncoder().encode(secret.normalize("NFKC")), "PBKDF2", false, ["deriveBits"]);
  return subtle().deriveBits({ name: "PBKDF2", hash: "SHA-256", salt, iterations }, key, bits);
}
