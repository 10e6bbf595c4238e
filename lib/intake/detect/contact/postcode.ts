import type { Announced } from "../announced";
import type { Hit } from "../suspicion";

// BS 7666 shapes; the first letter is never Q, V or X, the second never I, J or Z, the last two never C, I, K, M, O or V
const shape = /(?<![A-Z0-9])[A-PR-UWYZ][A-HK-Y]?\d[A-Z\d]? ?\d[ABD-HJLNP-UW-Z]{2}(?![A-Z0-9])/;
const special = /(?<![A-Z0-9])(?:GIR ?0AA|BFPO ?\d{1,4}|SAN ?TA1|ZZ99 ?\d[A-Z]{2})(?![A-Z0-9])/;
const zip = /^\d{5}(?:-\d{4})?$/;

/** UK postcodes anywhere in a clean text; five or nine digits where a header or word announces a postcode. */
export function findPostcodes(text: string, announced: Announced): readonly Hit[] {
  const capitals = text.toUpperCase();
  const found = shape.test(capitals) || special.test(capitals) || (announced.postcode && zip.test(text));
  return found ? [{ kind: "postcode", announced: announced.postcode }] : [];
}
