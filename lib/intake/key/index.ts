export { changePassphrase, openByPassphrase, openByRecoveryCode, sealUnitKey, type UnitKeyRecord } from "./key-record";
export { type KeyedPerson, type KeyRing, keyRing, shiftModulus } from "./key-ring";
export { normaliseLocalId, normaliseSurgeonName } from "./normalise";
export { iterationsDefault, passphraseMinimum } from "./passphrase";
export type { RandomBytes } from "./random";
export { makeRecoveryCode, readRecoveryCode } from "./recovery-code";
export { openKey, type SealedKey, sealKey, WrongSecretError } from "./seal";
export { keyIdOf, makeUnitKey, type UnitKey, unitKeyOf } from "./unit-key";
