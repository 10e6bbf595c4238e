/** Bytes as base64. @example toBase64(new Uint8Array([255, 0])) // => "/wA=" */
export function toBase64(bytes: Uint8Array): string {
  return btoa(String.fromCharCode(...bytes));
}

/** The bytes of base64. @throws RangeError when it is none; the text is not repeated */
export function fromBase64(text: string): Uint8Array<ArrayBuffer> {
  if (!/^[A-Za-z0-9+/]*={0,2}$/.test(text) || text.length % 4 !== 0)
    throw new RangeError("fromBase64 requires base64, received other text");
  return Uint8Array.from(atob(text), (character) => character.charCodeAt(0));
}
