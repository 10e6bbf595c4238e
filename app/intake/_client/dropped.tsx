import { counted } from "@/lib/charts";
import type { SheetShown } from "../_talk/view";
import { dropWords } from "./words";

/** Every column that isn't kept, with the reason. */
export function Dropped({ sheets }: { readonly sheets: readonly SheetShown[] }) {
  const out = sheets.flatMap(({ file, columns }) => columns.flatMap(({ header, why }) => (why === null ? [] : [{ file, header, why }])));
  if (out.length === 0) return null;
  return (
    <details>
      <summary>{counted(out.length, "column")} taken out whole, and why</summary>
      <ul className="plain sans">
        {out.map(({ file, header, why }) => (
          <li key={`${file} ${header}`}>
            <strong>{header}</strong>: {dropWords[why]}
          </li>
        ))}
      </ul>
    </details>
  );
}
