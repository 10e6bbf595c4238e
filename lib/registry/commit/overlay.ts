import { saidBeside } from "@/lib/intake";
import type { Cells, Layout } from "./cells";

/** Lays what a row says over what is held of it; `null` when nothing differs. A blank says nothing. */
export type Overlay = (held: Cells, fresh: Cells) => Cells | null;

function overlay(held: Cells, fresh: Cells): Cells | null {
  let changed = false;
  const merged = held.map((before, i) => {
    const cell = fresh[i] ?? null;
    if (cell === null || cell === before) return before;
    changed = true;
    return cell;
  });
  return changed ? merged : null;
}

/**
 * Of one body measure from two sheets the better word on how it was made holds, whichever came first: else the order of files would
 * decide. Places are those of `bodyDayFrom` and `occasion` among the versioned fields.
 */
function overlayOfMeasures(from: number, occasion: number): Overlay {
  const wordOf = (cells: Cells) => ({ from: cells[from] ?? null, occasion: cells[occasion] ?? null });
  return (held, fresh) => {
    const said = saidBeside(wordOf(held), wordOf(fresh));
    return overlay(
      held,
      fresh.map((cell, i) => (i === from ? said.from : i === occasion ? said.occasion : cell)),
    );
  };
}

export function overlayOf({ table, fields, versioned }: Layout): Overlay {
  if (table !== "bodyMeasure") return overlay;
  const placeOf = (id: string) => versioned.findIndex((place) => fields[place]?.[0] === id);
  return overlayOfMeasures(placeOf("bodyDayFrom"), placeOf("occasion"));
}
