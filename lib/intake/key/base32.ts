/** Crockford's alphabet: no I, L, O (read as 1, 1, 0) and no U. Common practice; from memory of his page. */
export const base32Alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/**
 * The first `length` characters of the bytes in base 32, five bits each, highest bit first.
 * @throws RangeError when the bytes hold fewer than `length` × 5 bits
 * @example base32(new Uint8Array([0xff, 0x00]), 3) // => "ZW0"
 */
export function base32(bytes: Uint8Array, length: number): string {
  if (length * 5 > bytes.length * 8) throw new RangeError(`base32 requires ${Math.ceil((length * 5) / 8)} bytes, received ${bytes.length}`);
  let text = "";
  for (let bit = 0; bit < length * 5; bit += 5) {
    const at = bit >> 3;
    const pair = ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
    text += base32Alphabet.charAt((pair >> (11 - (bit & 7))) & 31);
  }
  return text;
}
