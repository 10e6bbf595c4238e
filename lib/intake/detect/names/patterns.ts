import { isOrdinary, isOrdinaryAfterDoubtfulTitle, isOrdinaryAfterTitle } from "../words/person-words";

const word = "\\p{Lu}[\\p{L}'’-]{0,40}";
const longWord = "\\p{Lu}[\\p{L}'’-]{1,40}";
const notAfterLetter = "(?<![\\p{L}\\d])";
const title =
  "(?:Mrs?|Ms|Miss|Mstr|Master|Mx|Drs?|Prof(?:s|essor)?|Messrs|Sir|Dame|Lady|Lord|Rev|Herr|Frau|Mme|Mlle|Monsieur|Madame|Sra?|Srta|Dhr|Mevr|Mw)";
const role = capitalOrNot(
  "physician|pcp|provider|surgeon|consultant|operator|anaesthetist|anesthetist|gp|doctor|nurse|physio|seen by|reviewed by|referred by|operated by|performed by|done by|signed by|called",
);
const kin = capitalOrNot("patient|pt|mother|father|mum|dad|sister|brother|husband|wife|partner|son|daughter");
const prefix = "(?:[Vv]an der|[Vv]an den|[Vv]an de|[Vv]on der|[Dd]e la|[Dd]e los|[Dd]e las|[Dd]ella|[Vv]an|[Vv]on|[Bb]in|[Ii]bn)";
const letters = "(?:MD|M\\.D\\.|FRCS(?:Ed)?|MRCS|MBBS|MBChB|PhD|RN)";

/** A form in which names stand. The last group holds the word that must not be ordinary. */
export type NamePattern = {
  readonly form: RegExp;
  /** Something beside the word announces a name. */
  readonly announced: boolean;
  /** Which words are no name here. */
  readonly isNoName: (word: string) => boolean;
};

/** Families of forms: Meystre and others, BMC Med Res Methodol 2010;10:70, table 3. Every quantifier is bounded. */
export const namePatterns: readonly NamePattern[] = [
  {
    form: new RegExp(`${notAfterLetter}${title}\\.? {1,2}(?:(?:and|&) ${title}\\.? )?(${word})`, "gu"),
    announced: true,
    isNoName: isOrdinaryAfterTitle,
  },
  {
    form: new RegExp(`${notAfterLetter}(?:MRS|DR|PROF|MISS)\\.? {1,2}(\\p{Lu}[\\p{Lu}'’-]{1,40})`, "gu"),
    announced: true,
    isNoName: isOrdinaryAfterTitle,
  },
  {
    form: new RegExp(`${notAfterLetter}M[RS]\\.? {1,2}(\\p{Lu}[\\p{Lu}'’-]{2,40})`, "gu"),
    announced: true,
    isNoName: isOrdinaryAfterDoubtfulTitle,
  },
  {
    form: new RegExp(`${notAfterLetter}(?:mrs?|dr|prof)\\.? {1,2}(\\p{Ll}[\\p{Ll}'’-]{2,40})`, "gu"),
    announced: true,
    isNoName: isOrdinaryAfterDoubtfulTitle,
  },
  {
    form: /(?<!(?:device|nail|implant|drug|hospital|unit|file) )\b[Nn]ame(?:d|s)? {0,2}(?:is|was|:|=|-)? {0,2}(\p{Lu}[\p{L}'’-]{1,40})/gu,
    announced: true,
    isNoName: isOrdinary,
  },
  {
    form: new RegExp(`(?:^|[^\\p{L}])${role} {0,2}:? {0,2}(?:${title}\\.? )?(${longWord})`, "gu"),
    announced: true,
    isNoName: isOrdinary,
  },
  { form: new RegExp(`(${longWord}),? {1,2}${letters}(?![\\p{L}\\d])`, "gu"), announced: true, isNoName: isOrdinary },
  {
    form: new RegExp(`${notAfterLetter}${prefix} (${longWord}), {0,2}\\p{Lu}(?:\\.|(?![\\p{L}\\d]))`, "gu"),
    announced: true,
    isNoName: isOrdinary,
  },
  { form: new RegExp(`${notAfterLetter}(${longWord}), {0,2}\\p{Lu}(?:\\.|(?![\\p{L}\\d]))`, "gu"), announced: true, isNoName: isOrdinary },
  { form: new RegExp(`${notAfterLetter}(?:\\p{Lu}\\. ?){1,3}(${longWord})`, "gu"), announced: false, isNoName: isOrdinary },
  { form: new RegExp(`${notAfterLetter}${prefix} (${longWord})`, "gu"), announced: false, isNoName: isOrdinary },
  {
    form: new RegExp(`(?:^|[^\\p{L}])${kin}(?:'s|’s)? {1,2}(${longWord})`, "gu"),
    announced: false,
    isNoName: isOrdinary,
  },
];

// "Surgeon Sample" and "surgeon Sample"; hoisted, since the patterns are built while this file loads
function capitalOrNot(words: string): string {
  const each = words.split("|").map((one) => `[${one.charAt(0).toUpperCase()}${one.charAt(0)}]${one.slice(1)}`);
  return `(?:${each.join("|")})`;
}
