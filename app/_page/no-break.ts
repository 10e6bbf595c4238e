/** Keeps a number and its sign of percent or its unit on one line: `95 %` never breaks. */
export function noBreak(text: string): string {
  return text.replace(/(\d) (%|days|months|mm|segments?|patients?)/g, "$1\u00A0$2").replace(/% CI/g, "%\u00A0CI");
}
