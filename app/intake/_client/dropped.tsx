import { counted } from "@/lib/charts";
import type { SheetShown } from "../_talk/view";
import { dropWords, holdsWords } from "./words";

/** Every column that isn't kept, with the reason and what its cells were seen to hold. */
export function Dropped({ sheets }: { readonly sheets: readonly SheetShown[] }) {
  const out = sheets.flatMap(({ file, columns }) =>
    columns.flatMap(({ header, why, holds }) => (why === null ? [] : [{ file, header, why, holds }])),
  );
  if (out.length === 0) return null;
  return (
    <details open>
      <summary>{counted(out.length, "column")} taken out whole, and why</summary>
      <ul className="plain sans">
        {out.map(({ file, header, why, holds }) => (
          <li key={`${file} ${header}`}>
            <strong>{header}</strong>: {dropWords[why]}
            {holdsWords(holds)}
          </li>
        ))}
      </ul>
    </details>
  );
}
