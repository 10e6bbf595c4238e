import type { Announced } from "../announced";
import type { Hit } from "../suspicion";

// E.164: at most 15 digits after the plus
const international = /(?<![\d+])\+ ?[1-9](?:[ ().-]{0,3}\d){6,14}(?!\d)/;
const national = /(?<![\d.,/-])\(?0\d(?:[ ().-]{0,2}\d){8,9}(?![\d/])/;
const northAmerican = /(?<![\d.-])(?:\(\d{3}\) ?|\d{3}[-.])\d{3}[-.]\d{4}(?![\d-])/;
// 555-0100 to 555-0199 are kept for fiction and stand without an area
const fictional = /(?<![\d-])555-01\d{2}(?!\d)/;

/** Telephone numbers in a clean text. A plus and ten digits are nothing else; a number with a leading zero wants a word beside it. */
export function findPhones(text: string, announced: Announced): readonly Hit[] {
  const plus = international.exec(text)?.[0];
  if (plus !== undefined) return [{ kind: "phone", proof: plus.replace(/\D/g, "").length >= 10, announced: announced.phone }];
  if (national.test(text) || northAmerican.test(text) || fictional.test(text)) return [{ kind: "phone", announced: announced.phone }];
  return [];
}
