import { wordsOfCode } from "@/lib/codebook";
import type { PersonCase } from "../proportion/person-case";
import type { ProportionNorm } from "./proportion-norms";

const dysplasias: ReadonlySet<string | null> = new Set(["achondroplasia", "hypochondroplasia", "other-dysplasia"]);
const adultYears = 18;

/**
 * Why a norm doesn't fit some persons; `null` when it fits every one of them. A norm is of adults without a dysplasia, of its own sex, and
 * of its own way of measuring: a bone measured on another film, or nobody knows how, is not held against it.
 */
export function whyNormDoesNotFit(norm: ProportionNorm, persons: readonly PersonCase[]): string | null {
  const failing = [
    [(one: PersonCase) => (one.ageAtSurgeryYears ?? 0) < adultYears, "under 18, or of an age not recorded"],
    [(one: PersonCase) => dysplasias.has(one.aetiology), "with a dysplasia"],
    [(one: PersonCase) => norm.sex !== "both" && one.sex !== norm.sex, `not recorded as ${norm.sex}`],
    [(one: PersonCase) => !isMeasuredSo(norm, one), `measured otherwise than ${wordsOfCode(norm.method)}, or not recorded how`],
  ] as const;
  for (const [fails, words] of failing) {
    const n = persons.filter(fails).length;
    if (n > 0) return `${n} of ${persons.length} are ${words}`;
  }
  return null;
}

function isMeasuredSo({ method }: ProportionNorm, { bodyMeasures }: PersonCase): boolean {
  if (method === "body-measures") return true;
  const bones = bodyMeasures.filter((one) =>
    [one.femurLeftMm, one.femurRightMm, one.tibiaLeftMm, one.tibiaRightMm].some((mm) => mm !== null),
  );
  return bones.length > 0 && bones.every(({ lengthMethod }) => lengthMethod === method);
}
