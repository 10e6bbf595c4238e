import { base32, base32Alphabet } from "./base32";
import type { RandomBytes } from "./random";

const groups = 6;
const groupLength = 5;
const codeLength = groups * groupLength;

/**
 * A recovery code to print: six groups of five characters, 150 random bits, in an alphabet without letters that are heard or read as
 * another (I, L, O, U).
 */
export function makeRecoveryCode(random: RandomBytes): string {
  const text = base32(random(Math.ceil((codeLength * 5) / 8)), codeLength);
  return Array.from({ length: groups }, (_, group) => text.slice(group * groupLength, (group + 1) * groupLength)).join("-");
}

/**
 * A recovery code as typed, in the form in which it was made: case, blanks and dashes don't matter, O is 0, I and L are 1.
 * @throws RangeError when it can't be a recovery code; what was typed is not repeated
 * @example readRecoveryCode("0o1lI 22222 33333 44444 55555 66666") // => "00111-22222-33333-44444-55555-66666"
 */
export function readRecoveryCode(typed: string): string {
  const plain = typed
    .normalize("NFKC")
    .toUpperCase()
    .replace(/[\p{White_Space}\p{Dash}]/gu, "")
    .replaceAll("O", "0")
    .replace(/[IL]/g, "1");
  const others = [...plain].filter((character) => !base32Alphabet.includes(character)).length;
  if (plain.length !== codeLength || others > 0)
    throw new RangeError(`readRecoveryCode requires ${codeLength} letters and digits, received ${plain.length - others}`);
  return (plain.match(/.{5}/g) ?? []).join("-");
}
