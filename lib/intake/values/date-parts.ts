/** A date as typed, before its order is known. `a`, `b`, `c` as they stand; `month` where it is a word. */
export type DateParts =
  | { readonly kind: "ymd"; readonly year: number; readonly month: number; readonly day: number }
  | { readonly kind: "word"; readonly day: number; readonly month: number; readonly yearText: string }
  | { readonly kind: "open"; readonly a: number; readonly b: number; readonly yearText: string };

const months = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"] as const;
const fullMonths = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];
const time = "(?:[ T]\\d{1,2}[:.]\\d{2}(?:[:.]\\d{2}(?:\\.\\d{1,6})?)?(?: ?[ap]\\.?m\\.?)?(?:Z|[+-]\\d{2}:?\\d{2})?)?";
const yearFirst = new RegExp(`^(\\d{4})([-/. ])(\\d{1,2})\\2(\\d{1,2})${time}$`, "i");
const yearLast = new RegExp(`^(\\d{1,2}) ?([-/. ]) ?(\\d{1,2}) ?\\2 ?(\\d{4}|\\d{2})\\.?${time}$`, "i");
const compact = /^(19|20)(\d{2})(\d{2})(\d{2})$/;
const dayWord = new RegExp(`^(\\d{1,2})(?:st|nd|rd|th|\\.)?[ -/]*([a-z]{3,9})\\.?,?[ -/]*(\\d{4}|'?\\d{2})${time}$`, "i");
const wordDay = new RegExp(`^([a-z]{3,9})\\.? *(\\d{1,2})(?:st|nd|rd|th)?,? +(\\d{4})${time}$`, "i");
const weekday = /^(?:mon|tue|wed|thu|fri|sat|sun)[a-z]{0,6}[.,]? +/i;

/** The parts of a typed date, or `null` when the text is none. A time of day is taken off. */
export function datePartsOf(cell: string): DateParts | null {
  const text = cell.trim().replace(weekday, "");
  const first = yearFirst.exec(text);
  if (first) return { kind: "ymd", year: Number(first[1]), month: Number(first[3]), day: Number(first[4]) };
  const last = yearLast.exec(text);
  if (last) return { kind: "open", a: Number(last[1]), b: Number(last[3]), yearText: last[4] as string };
  const run = compact.exec(text);
  if (run) return { kind: "ymd", year: Number(`${run[1]}${run[2]}`), month: Number(run[3]), day: Number(run[4]) };
  return inWords(text);
}

function inWords(text: string): DateParts | null {
  const dayFirst = dayWord.exec(text);
  if (dayFirst) return word(dayFirst[1] as string, dayFirst[2] as string, dayFirst[3] as string);
  const monthFirst = wordDay.exec(text);
  return monthFirst ? word(monthFirst[2] as string, monthFirst[1] as string, monthFirst[3] as string) : null;
}

function word(day: string, name: string, year: string): DateParts | null {
  const month = monthOf(name.toLowerCase());
  return month === 0 ? null : { kind: "word", day: Number(day), month, yearText: year.replace("'", "") };
}

function monthOf(name: string): number {
  const short = months.indexOf(name as (typeof months)[number]);
  if (short >= 0) return short + 1;
  return name === "sept" ? 9 : fullMonths.indexOf(name) + 1;
}
