import { fold } from "@/lib/codebook";
import type { LengthUnit, TimeUnit } from "../types";

export type HeaderUnit = LengthUnit | TimeUnit | "deg" | "kg" | "days/cm" | "months/cm" | "mm/day";
export type HeaderParts = { readonly words: string; readonly unit: HeaderUnit | null };

const spellings: Readonly<Record<string, HeaderUnit>> = {
  mm: "mm",
  millimetre: "mm",
  millimetres: "mm",
  millimeter: "mm",
  millimeters: "mm",
  cm: "cm",
  cms: "cm",
  centimetre: "cm",
  centimetres: "cm",
  centimeter: "cm",
  centimeters: "cm",
  m: "m",
  metre: "m",
  metres: "m",
  in: "in",
  inch: "in",
  inches: "in",
  d: "days",
  day: "days",
  days: "days",
  wk: "weeks",
  wks: "weeks",
  week: "weeks",
  weeks: "weeks",
  mo: "months",
  mos: "months",
  mth: "months",
  mths: "months",
  month: "months",
  months: "months",
  y: "years",
  yr: "years",
  yrs: "years",
  year: "years",
  years: "years",
  deg: "deg",
  degree: "deg",
  degrees: "deg",
  kg: "kg",
  kgs: "kg",
  "mm day": "mm/day",
  "mm d": "mm/day",
  "mm per day": "mm/day",
  "days cm": "days/cm",
  "day cm": "days/cm",
  "d cm": "days/cm",
  "days per cm": "days/cm",
  "months cm": "months/cm",
  "month cm": "months/cm",
  "mo cm": "months/cm",
  "mths cm": "months/cm",
  "months per cm": "months/cm",
};

/** Units that can stand bare after the last word: letters that are words of their own (`in`, `m`, `d`, `y`) can't. */
const bare = new Set(["mm", "cm", "cms", "inches", "days", "weeks", "months", "years", "yrs", "kg", "deg", "degrees"]);

/** @example unitOf("°") // => "deg" */
export function unitOf(text: string): HeaderUnit | null {
  if (/^\s*°\s*$/.test(text)) return "deg";
  if (/^\s*["”″]\s*$/.test(text)) return "in";
  return spellings[fold(text)] ?? null;
}

/**
 * A header without its unit, folded, and the unit: in brackets, after a comma, as `in months`, bare at the end, or as `days to …`.
 * What stands in the brackets and is no unit stays a part of the words.
 * @example headerParts("Consolidation (months)") // => { words: "consolidation", unit: "months" }
 */
export function headerParts(header: string): HeaderParts {
  return (
    bracketed(header) ?? afterComma(header) ?? leading(header) ?? inUnit(header) ?? trailing(header) ?? { words: fold(header), unit: null }
  );
}

function bracketed(header: string): HeaderParts | null {
  const match = /^(.*?)\s*[([{]([^()[\]{}]{1,20})[)\]}]\s*$/s.exec(header);
  return match ? withUnit(match[1] as string, match[2] as string) : null;
}

function afterComma(header: string): HeaderParts | null {
  const at = header.lastIndexOf(",");
  return at > 0 ? withUnit(header.slice(0, at), header.slice(at + 1).replace(/^\s*in\s+/i, "")) : null;
}

function inUnit(header: string): HeaderParts | null {
  const match = /^(.+)\sin\s(\S{1,20})$/i.exec(fold(header));
  return match ? withUnit(match[1] as string, match[2] as string) : null;
}

function leading(header: string): HeaderParts | null {
  const match = /^(days|weeks|months) (?:to|until|till) (.+)$/.exec(fold(header));
  return match ? withUnit(match[2] as string, match[1] as string) : null;
}

function trailing(header: string): HeaderParts | null {
  const match = /^(.+)\s(\S+)$/.exec(fold(header));
  return match && bare.has(match[2] as string) ? withUnit(match[1] as string, match[2] as string) : null;
}

function withUnit(rest: string, unitText: string): HeaderParts | null {
  const unit = unitOf(unitText);
  const words = fold(rest);
  return unit && words !== "" ? { words, unit } : null;
}
