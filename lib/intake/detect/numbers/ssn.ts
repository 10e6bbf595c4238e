import type { Hit } from "../suspicion";

const dashed = /(?<![\d-])\d{3}-\d{2}-\d{4}(?![\d-])/g;

/**
 * US social security numbers have no check digit: 3-2-4 with hyphens is the sign. Areas 000, 666 and 9xx, group 00 and serial 0000 are
 * never given (987-65-432x is kept for advertising): they have the shape only. Nine digits without hyphens count under a header that says so.
 */
export function socialSecurityNumbers(text: string, announced: boolean): readonly Hit[] {
  const found = text.match(dashed) ?? (announced && /^\d{9}$/.test(text) ? [text] : []);
  if (found.length === 0) return [];
  return [{ kind: "us-ssn", announced, shapeOnly: found.every(isNeverGiven) }];
}

function isNeverGiven(number: string): boolean {
  const digits = number.replaceAll("-", "");
  return /^(?:000|666|9)/.test(digits) || digits.slice(3, 5) === "00" || digits.slice(5) === "0000";
}
