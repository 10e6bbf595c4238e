import { subtle } from "./subtle";

const utf8 = new TextEncoder();

/** A key ready for HMAC-SHA-256; it can't be read out again. */
export function importHmacKey({ bytes }: { readonly bytes: Uint8Array<ArrayBuffer> }): Promise<CryptoKey> {
  return subtle().importKey("raw", bytes, { name: "HMAC", hash: "SHA-256" }, false, ["sign"]);
}

/** HMAC-SHA-256 of a text in UTF-8, 32 bytes (RFC 2104 with SHA-256; vectors: RFC 4231). */
export async function hmacSha256(key: CryptoKey, message: string): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await subtle().sign("HMAC", key, utf8.encode(message)));
}
