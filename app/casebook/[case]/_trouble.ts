import { labelOfCode } from "@/lib/codebook";

/** Why a correction wasn't made, by the code that the address bears. */
export function troubleWords(code: string): string {
  return (
    words[code] ??
    `The registry can’t take it: ${labelOfCode(code).toLowerCase()}. It would make the case wrong as a sheet with that value would.`
  );
}

const words: Readonly<Record<string, string>> = {
  typed: "What was typed is no value of this field.",
  unknown: "The case has no such row or field to correct.",
  same: "It says so already.",
  failed: "The registry’s file could not be written: the disk, or another program, stood in the way.",
  "out-of-hard-range": "That value lies outside what the field can hold.",
  "required-missing": "This field can’t be blank.",
};
