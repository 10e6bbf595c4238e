import { digitAt, falling, weightedSum } from "../check-digits/weighted";
import type { Hit } from "../suspicion";

const ppsLetters = "WABCDEFGHIJKLMNOPQRSTUV";
// second letters that count in the sum; W, T and X of older numbers count nothing
const ppsSecond: Readonly<Record<string, number>> = { A: 1, B: 2, H: 8 };

/** Irish PPS number: seven digits, a check letter (modulus 23), sometimes a second letter. Capitals. */
export function hasPpsCheck(number: string): boolean {
  const sum = weightedSum(number, falling(8, 7)) + 9 * (ppsSecond[number.charAt(8)] ?? 0);
  return number.charAt(7) === ppsLetters.charAt(sum % 23);
}

/** German KVNR: a letter as 01 to 26 and eight digits, weighted 1, 2, 1, 2 …, digits of the products added, modulus 10. Capitals. */
export function hasKvnrCheck(number: string): boolean {
  const digits = `${String(number.charCodeAt(0) - 64).padStart(2, "0")}${number.slice(1)}`;
  let sum = 0;
  for (let at = 0; at < 10; at++) {
    const product = digitAt(digits, at) * (1 + (at % 2));
    sum += product > 9 ? product - 9 : product;
  }
  return sum % 10 === digitAt(digits, 10);
}

/** French NIR: 13 characters and 97 less their remainder by 97; Corsica's 2A and 2B count as 19 and 18. Capitals. */
export function hasNirCheck(number: string): boolean {
  const digits = number.slice(0, 13).replace("2A", "19").replace("2B", "18");
  // 13 digits are exact in a double
  return 97 - (Number(digits) % 97) === Number(number.slice(13));
}

const pps = /(?<![A-Z0-9])\d{7}[A-W][ABHWTX]?(?![A-Z0-9])/g;
const kvnr = /(?<![A-Z0-9])[A-Z]\d{9}(?![0-9])/g;
const nir = /(?<![A-Z0-9])[1-4]\d{4}(?:\d{2}|2[AB])\d{8}(?![0-9])/g;
const longestCompact = 30;

/** Numbers of digits and letters that check themselves, in a clean text and, in a short cell, across its separators. */
export function letteredNumbers(text: string): readonly Hit[] {
  const capitals = text.toUpperCase();
  const texts = text.length <= longestCompact ? [capitals, capitals.replace(/[ ./-]/g, "")] : [capitals];
  const any = (form: RegExp, holds: (number: string) => boolean) => texts.some((each) => (each.match(form) ?? []).some(holds));
  const hits: Hit[] = [];
  if (any(pps, hasPpsCheck)) hits.push({ kind: "irish-pps", proof: true });
  if (any(kvnr, hasKvnrCheck)) hits.push({ kind: "german-kvnr", proof: true });
  if (any(nir, hasNirCheck)) hits.push({ kind: "french-nir", proof: true });
  return hits;
}
