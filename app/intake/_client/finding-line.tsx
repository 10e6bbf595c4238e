import { labelOfCode } from "@/lib/codebook";
import type { Finding } from "@/lib/intake";

/** One finding: where, what was found and expected, and the mend. */
export function FindingLine({ finding }: { readonly finding: Finding }) {
  const { code, row, column, found, expected, mend } = finding;
  const place = [row === null ? null : `row ${row}`, column].filter((part) => part !== null).join(", ");
  return (
    <li className="finding sans">
      <strong>{labelOfCode(code)}</strong>
      {place === "" ? "" : ` (${place})`}: found {found}; expected {expected}. <span className="mend">{mend}</span>
    </li>
  );
}
