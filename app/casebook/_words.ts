import { decimals } from "@/lib/charts";
import { type Value, wordsOfCode } from "@/lib/codebook";

/** Codes whose words aren't their own letters. */
const words: Readonly<Record<string, string>> = {
  healed: "healed",
  "still-distracting": "still being lengthened",
  rescued: "further bone surgery, not healed since",
  "ended-unhealed": "ended unhealed",
  "healing-date-missing": "healing date missing",
  "not-healed-at-last-film": "not healed at last film",
  // of a film: it could have been taken, and none is held
  due: "missing",
};

/** `magnetic-nail` → `magnetic nail`. */
export function codeWords(code: string): string {
  return words[code] ?? wordsOfCode(code);
}

/** Digits after the point that say something, two at the most. */
export function digitsNeeded(value: number): number {
  return [0, 1, 2].find((n) => Math.abs(value - Number(value.toFixed(n))) < 1e-9) ?? 2;
}

/** A number without zeros that say nothing, or with the digits given. */
export function numberWords(value: number, digits = digitsNeeded(value)): string {
  return decimals(value, digits);
}

type Shown = { readonly kind: "code" | "flag" | "number" | "days" | "text"; readonly unit: string | null };

/** A value in words, without its unit; a number with no more digits than it needs, or with those of its column. What was not recorded is a dash. */
export function valueText({ kind }: Pick<Shown, "kind">, value: Value, digits?: number): string {
  if (value === null) return "–";
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "number") return numberWords(value, digits);
  return kind === "code" ? codeWords(value) : value;
}

/** A value in words with its unit: `40 mm`, `day 48`, `90°`. */
export function valueWords(shown: Shown, value: Value): string {
  const text = valueText(shown, value);
  if (value === null) return "not recorded";
  if (shown.kind === "days") return `day ${text}`;
  if (shown.unit === null) return text;
  return shown.unit === "deg" ? `${text}°` : `${text} ${shown.unit}`;
}

/** A field with its value, within a sentence: `femur, left 481 mm`, `resolved day 48`. */
export function fieldWords(shown: Shown & { readonly label: string }, value: Value): string {
  const label = shown.label.toLowerCase();
  // the value of a day says day itself
  return `${shown.kind === "days" ? label.replace(/^day (of )?/, "") : label} ${valueWords(shown, value)}`;
}

/** The first letter large. */
export function sentence(text: string): string {
  return `${text.charAt(0).toUpperCase()}${text.slice(1)}`;
}
