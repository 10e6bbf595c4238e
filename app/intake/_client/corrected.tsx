import { counted } from "@/lib/charts";
import { fieldOf } from "@/lib/codebook";
import type { OverCorrections } from "../_talk/messages";
import type { View } from "../_talk/view";
import type { PartProps } from "./part-props";
import { cellWords } from "./words";

type Props = Pick<PartProps, "store" | "state"> & Pick<View, "corrected">;

const choices: readonly (readonly [value: OverCorrections, words: string])[] = [
  ["keep", "Leave the corrections; these cells are held back"],
  ["sheet", "Take what the sheet says; the corrections end"],
];

/** Fields corrected by hand of which the sheet says something new: both shown, and asked. */
export function Corrected({ store, state, corrected: { cells, of } }: Props) {
  if (of === 0) return null;
  return (
    <fieldset className="said warm corrected">
      <legend>
        {counted(of, "cell")} {of === 1 ? "says" : "say"} something else than a correction made by hand
      </legend>
      <ul className="plain sans number">
        {cells.map((cell) => (
          <li key={`${cell.file} ${cell.row} ${cell.table} ${cell.field}`}>
            {cell.file}, row {cell.row}: {fieldOf(cell.table, cell.field).label}, corrected to {cellWords(cell, "held")}; the sheet now says{" "}
            {cellWords(cell, "says")}
          </li>
        ))}
      </ul>
      {of > cells.length ? <p className="muted">and {of - cells.length} more.</p> : null}
      {choices.map(([value, text]) => (
        <p key={value} className="sans">
          <label>
            <input
              type="radio"
              name="corrections"
              checked={state.corrections === value}
              onChange={() => store.set({ corrections: value })}
            />{" "}
            {text}
          </label>
        </p>
      ))}
    </fieldset>
  );
}
