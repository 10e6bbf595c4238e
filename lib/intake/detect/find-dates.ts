import { isCalendarDate } from "../strip/calendar-day";
import type { Announced } from "./announced";
import type { Hit } from "./suspicion";

const months =
  "jan|feb|mar|apr|may|jun|jul|aug|sep|sept|oct|nov|dec|mär|mai|okt|dez|maj|mrt|janv|févr|fev|avr|juin|juil|août|aout|déc|ene|abr|ago|dic";
const monthWord = `(?:${months})[a-zäéû]{0,9}\\.?`;

const yearFirst = /(?<![\d./-])(\d{4})([./-])(\d{1,2})\2(\d{1,2})(?![\d/-]|\.\d)/g;
const yearLast = /(?<![\d./-])(\d{1,2})([ ./-]{1,2})(\d{1,2})\2(\d{4}|\d{2})(?![\d/-]|\.\d)/g;
const compact = /(?<![\d.,/-])((?:18|19|20)\d{2})(\d{2})(\d{2})(?![\d/-]|[.,]\d)/g;
const dayMonthWord = new RegExp(
  `(?<![\\d./-])\\d{1,2}(?:st|nd|rd|th|\\.)?[ -]{0,2}(?:of )?${monthWord}[ ,'-]{0,3}(?:\\d{4}|\\d{2})(?!\\d)`,
  "i",
);
const monthWordDay = new RegExp(`(?<![a-zäéû])${monthWord} ?\\d{1,2}(?:st|nd|rd|th)?,? {1,2}(?:\\d{4})(?!\\d)`, "i");
const monthYear = new RegExp(
  `(?<![\\d./-])(?:(?:0?[1-9]|1[0-2])[./-](?:19|20)\\d{2}|(?<![a-zäéû])${monthWord}[ '-]{1,2}(?:19|20)\\d{2})(?![\\d/-])`,
  "i",
);

/** First and last serial day of a spreadsheet from 1970 to the end of 2050. */
const serialDays = [25_569, 55_153] as const;

/** Full dates in a clean text; a month with its year apart; the serial days of a spreadsheet where something announces a date. */
export function findDates(text: string, announced: Announced): readonly Hit[] {
  const date: Hit = { kind: "date", announced: announced.date };
  if (!/\d/.test(text)) return [];
  if (hasDate(text) || (announced.date && isSerialDay(text))) return [date];
  return monthYear.test(text) ? [{ kind: "month-and-year", announced: announced.date }] : [];
}

function hasDate(text: string): boolean {
  for (const [, year, , month, day] of text.matchAll(yearFirst)) if (isDay(year, month, day)) return true;
  for (const [, first, , second, year] of text.matchAll(yearLast))
    if (isDay(year, second, first) || isDay(year, first, second)) return true;
  for (const [, year, month, day] of text.matchAll(compact)) if (isDay(year, month, day)) return true;
  return dayMonthWord.test(text) || monthWordDay.test(text);
}

// a two-digit year is taken in 2000: whether the day exists depends on it for 29 February alone, and 2000 has one
function isDay(year = "", month = "", day = ""): boolean {
  return isCalendarDate(year.length === 2 ? 2000 : Number(year), Number(month), Number(day));
}

function isSerialDay(text: string): boolean {
  return /^\d{5}(?:[.,]\d{1,10})?$/.test(text) && Number(text.slice(0, 5)) >= serialDays[0] && Number(text.slice(0, 5)) <= serialDays[1];
}
