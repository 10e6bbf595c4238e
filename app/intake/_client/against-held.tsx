import { counted } from "@/lib/charts";
import { fieldOf } from "@/lib/codebook";
import type { View } from "../_talk/view";
import { cellWords, nouns } from "./words";

/** In which fields rows differ from what is held. */
export function Changes({ changes }: Pick<View, "changes">) {
  if (changes.length === 0) return null;
  return (
    <details open>
      <summary>What changes, field by field</summary>
      <ul className="plain sans number">
        {changes.map((change) => (
          <li key={`${change.table} ${change.field}`}>
            <strong>{fieldOf(change.table, change.field).label}</strong>, {counted(change.rows, nouns[change.table])}: {cellsWords(change)}
          </li>
        ))}
      </ul>
      <p className="muted">
        The new values are kept; the ones before stay in the history. A blank cell clears nothing. Days are counted from the segment’s
        surgery. All of them, row by row, stand under the findings “changed since last”.
      </p>
    </details>
  );
}

/** `row 8, day 150 → day 146; row 30, 50 → 80 and 3 more`. */
function cellsWords({ cells, rows }: View["changes"][number]): string {
  const shown = cells.map((cell) => `row ${cell.row}, ${cellWords(cell, "held")} → ${cellWords(cell, "says")}`).join("; ");
  return rows > cells.length ? `${shown} and ${rows - cells.length} more` : shown;
}

/** Segments held and not in the files: listed, and left as they are. */
export function Absent({ absent: { rows, of } }: Pick<View, "absent">) {
  if (rows.length === 0) return null;
  return (
    <details open>
      <summary>{counted(of.segment, "segment")} held and not in the file</summary>
      <p className="muted">
        They stay as they are: what a file doesn’t name, it says nothing about. The registry knows no names, so they are told by what it
        holds.
      </p>
      <ul className="plain sans number">
        {rows.map(({ words }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two segments may be told by the same words
          <li key={i}>{words}</li>
        ))}
      </ul>
      {of.segment > rows.length ? <p className="muted">and {of.segment - rows.length} more.</p> : null}
    </details>
  );
}
