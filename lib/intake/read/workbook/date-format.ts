/** Built-in formats of dates and times by number (ISO/IEC 29500-1, 18.8.30), with those of East Asian and Thai spreadsheets. */
const builtIn: readonly (readonly [from: number, to: number])[] = [
  [14, 22],
  [27, 36],
  [45, 47],
  [50, 58],
  [71, 81],
];

export function isBuiltInDateFormat(id: number): boolean {
  return builtIn.some(([from, to]) => id >= from && id <= to);
}

/**
 * Whether a format shows a number as a calendar day: outside quotes, escapes and brackets it holds a `y`, or a `d`, or `mmm`. Hours and
 * minutes alone are no day.
 * @example isDateFormat('dd/mm/yyyy;@') // => true
 */
export function isDateFormat(format: string): boolean {
  const plain = format
    .toLowerCase()
    .replace(/"[^"]*"/g, "")
    .replace(/[\\_*]./g, "")
    .replace(/\[[^\]]*\]/g, "");
  return plain.split(";").some(showsDay);
}

// a section with digits shows a number (`0.0"d"`), and so does *General*; fractions of a second are no digits
function showsDay(section: string): boolean {
  const isNumber = /[0#?]/.test(section.replace(/[.,]0+/g, "")) || section.includes("general");
  return !isNumber && /[yde]|mmm/.test(section);
}
