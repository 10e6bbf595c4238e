/** What a piece of text looks like. */
export type SuspicionKind =
  | "nhs-number"
  | "chi-number"
  | "irish-pps"
  | "irish-ihi"
  | "us-ssn"
  | "canadian-sin"
  | "bc-phn"
  | "australian-medicare"
  | "australian-ihi"
  | "german-kvnr"
  | "french-nir"
  | "indian-aadhaar"
  | "dutch-bsn"
  | "record-number"
  | "long-number"
  | "number-lost-to-spreadsheet"
  | "postcode"
  | "email"
  | "phone"
  | "ip-address"
  | "url"
  | "date"
  | "month-and-year"
  | "name"
  | "free-text";

/** What speaks for it. */
export type Evidence = {
  /** A check digit holds, or the form is one that nothing else has (`@` with a domain, a scheme and `://`). */
  readonly proof?: boolean;
  /** A header, or a word in the same cell, that announces it. */
  readonly announced?: boolean;
  /** All digits alike, 1234567890, ranges kept for tests and advertising: it has the shape and can't be anyone's. */
  readonly shapeOnly?: boolean;
};

/** `block` sets the row aside, `warn` wants the person's word. Never the value, nor where in the text it stood. */
export type Suspicion = { readonly kind: SuspicionKind; readonly score: number; readonly level: "block" | "warn" };

/** A form found, before scoring. */
export type Hit = { readonly kind: SuspicionKind } & Evidence;

const blockFrom = 3;
const mostOfAShape = 2;

/**
 * Points of a hit: form 1, proof 2, announced 2, found in half of its column 2. Three block, fewer warn; what has the shape only never
 * blocks. The weights are our choice; no source.
 */
export function scoreOf({ proof = false, announced = false, shapeOnly = false }: Evidence, inHalfOfColumn = false): number {
  const points = 1 + (proof ? 2 : 0) + (announced ? 2 : 0) + (inHalfOfColumn ? 2 : 0);
  return shapeOnly ? Math.min(mostOfAShape, points) : points;
}

/** A hit with its score. @example suspicionOf({ kind: "email", proof: true }).level // => "block" */
export function suspicionOf(hit: Hit, inHalfOfColumn = false): Suspicion {
  const score = scoreOf(hit, inHalfOfColumn);
  return { kind: hit.kind, score, level: score >= blockFrom ? "block" : "warn" };
}
