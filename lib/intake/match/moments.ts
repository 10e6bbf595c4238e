import type { Moment } from "./target";

const words: Readonly<Record<Moment, readonly string[]>> = {
  before: ["pre op", "preop", "pre operative", "preoperative", "before", "before surgery", "initial", "baseline"],
  final: ["final", "post op", "postop", "post operative", "postoperative", "after", "last", "at follow up", "at last follow up"],
};

/** A folded alias without the words that say when it was measured. @example baseOf("final left femur length") // => "left femur length" */
export function baseOf(alias: string): string {
  let base = alias;
  for (const word of [...words.before, ...words.final].sort((a, b) => b.length - a.length)) {
    base = base.replace(new RegExp(`^${word} | ${word}$`), "");
  }
  return base;
}

/** Every way of saying a base at a moment: *final height*, *height final*; the bare word is the measure before. */
export function saidAt(base: string): readonly (readonly [words: string, moment: Moment])[] {
  const said = (moment: Moment) =>
    words[moment].flatMap((word) => [[`${word} ${base}`, moment] as const, [`${base} ${word}`, moment] as const]);
  return [[base, "before"] as const, ...said("before"), ...said("final")];
}
