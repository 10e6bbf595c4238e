import type { Announced } from "../announced";
import type { Hit, SuspicionKind } from "../suspicion";
import { type Candidate, numberCandidates } from "./candidates";
import { letteredNumbers } from "./lettered";
import { nationalNumbers } from "./national";
import { scientificNumber } from "./scientific";
import { isShapeOnly } from "./shape-only";
import { socialSecurityNumbers } from "./ssn";

/** Numbers in a clean text: those that check themselves, and long ones that don't. */
export function findNumbers(text: string, announced: Announced): readonly Hit[] {
  const scientific = scientificNumber(text);
  if (scientific?.lost) return [{ kind: "number-lost-to-spreadsheet", proof: true }];
  const candidates = scientific ? [{ digits: scientific.digits, solid: true }] : numberCandidates(text);
  const hits: Hit[] = [...letteredNumbers(text), ...socialSecurityNumbers(text, announced.number)];
  for (const candidate of candidates) hits.push(...nationalHits(candidate, announced.number));
  if (hits.length > 0) return hits;
  return unprovenHits(text, candidates, announced.number);
}

function nationalHits({ digits }: Candidate, announced: boolean): readonly Hit[] {
  const kinds = new Set<SuspicionKind>();
  for (const { kind, lengths, holds } of nationalNumbers) if (lengths.includes(digits.length) && holds(digits)) kinds.add(kind);
  return [...kinds].map((kind) => ({ kind, proof: true, announced, shapeOnly: isShapeOnly(digits) }));
}

// no check digit holds: a run of seven digits still is no measurement, and a shorter one is a record number where a header or word says so
function unprovenHits(text: string, candidates: readonly Candidate[], announced: boolean): readonly Hit[] {
  const runs = candidates.filter(({ solid }) => solid);
  if (runs.length > 0 && !announced) return [{ kind: "long-number", shapeOnly: runs.every(({ digits }) => isShapeOnly(digits)) }];
  const longest = runs.length > 0 || /\d{4}/.test(text) ? text : "";
  if (announced && longest !== "") {
    const shapeOnly = candidates.length > 0 && candidates.every(({ digits }) => isShapeOnly(digits));
    return [{ kind: "record-number", announced, shapeOnly }];
  }
  return [];
}
