/**
 * The platform's cryptography.
 * @throws Error where there is none: browsers give it on localhost and https only
 */
export function subtle(): SubtleCrypto {
  const found = globalThis.crypto?.subtle;
  if (found === undefined) throw new Error("the unit's key requires WebCrypto, which a browser has on localhost and https only");
  return found;
}
