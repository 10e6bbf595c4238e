import { tables, type Value } from "@/lib/codebook";

/** How a body measure was made: where its day is from, and on what occasion. */
export type Made<V = Value> = { readonly from: V; readonly occasion: V };

/** A day recorded is the better word than one taken from a surgery, and that than one taken from the last follow-up. */
const trust: Readonly<Record<string, number>> = { recorded: 3, surgery: 2, "last-follow-up": 1 };
const trustOf = ({ from }: Made<unknown>) => trust[String(from)] ?? 0;

function trustOfOccasion(made: Made<unknown>): number {
  if (made.occasion === null) return 0;
  // of a sheet without moments, whose rows stand on the day of their surgery: nobody said "other"
  if (made.occasion === "other" && made.from !== "recorded") return 0.5;
  return made.from === null ? 3 : trustOf(made);
}

/**
 * What a body measure has to say of how it was made where another word on the same person and day stands: the better word holds, whichever
 * came first, else the order of rows and files would decide.
 */
export function saidBeside<V>(other: Made<V>, own: Made<V>): Made<V | null> {
  return {
    from: trustOf(own) < trustOf(other) ? null : own.from,
    occasion: trustOfOccasion(own) < trustOfOccasion(other) ? null : own.occasion,
  };
}

const occasions: readonly Value[] = tables.bodyMeasure.fields.occasion.codes;

/** Of two words on one measure that whose occasion holds; of two as good, the occasion that the codebook names first. */
export function betterOccasion(a: Made, b: Made): Made {
  const [trustA, trustB] = [trustOfOccasion(a), trustOfOccasion(b)];
  if (trustA !== trustB) return trustA > trustB ? a : b;
  return occasions.indexOf(a.occasion) <= occasions.indexOf(b.occasion) ? a : b;
}
