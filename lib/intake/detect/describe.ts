import { nothingAnnounced } from "./announced";
import { cleanText } from "./clean";
import { findDates } from "./find-dates";

const count = (n: number, one: string) => `${n} ${one}${n === 1 ? "" : "s"}`;

/**
 * A cell in words that never repeat it: what kind of thing, and how long.
 * @example describeCell("Zed Example") // => "text, 10 letters"
 */
export function describeCell(text: string): string {
  const clean = cleanText(text);
  if (clean === "") return "nothing";
  const digits = (clean.match(/\d/g) ?? []).length;
  const letters = (clean.match(/\p{L}/gu) ?? []).length;
  if (letters === 0 && digits === 0) return count([...clean].length, "sign");
  if (findDates(clean, nothingAnnounced).length > 0 && clean.length <= 20) return "a date";
  if (letters === 0) return `a number, ${count(digits, "digit")}`;
  return `text, ${count(letters, "letter")}${digits > 0 ? ` and ${count(digits, "digit")}` : ""}`;
}
