/** Keeps a number and its sign of percent, its unit, its minus or its p on one line: neither `95 %` nor `t(G − 1)` breaks. */
export function noBreak(text: string): string {
  return text
    .replace(/(\d) (%|days|months|mm|segments?|patients?)/g, "$1\u00A0$2")
    .replace(/% CI/g, "%\u00A0CI")
    .replace(/\bp (?=below|\d)/g, "p\u00A0")
    .replace(/ − (?=\d)/g, "\u00A0−\u00A0");
}
