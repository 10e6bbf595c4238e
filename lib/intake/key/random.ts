/** A source of random bytes, passed in: `(length) => crypto.getRandomValues(new Uint8Array(length))`. */
export type RandomBytes = (length: number) => Uint8Array<ArrayBuffer>;
