import type { Cell, Cells, Layout } from "./cells";

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

/** How a body measure was made: where its day is from, and on what occasion. */
type Made = { readonly from: Cell; readonly occasion: Cell };

/** A day recorded is the better word than one taken from a surgery, and that than one taken from the last follow-up. */
const trust: Readonly<Record<string, number>> = { recorded: 3, surgery: 2, "last-follow-up": 1 };
const trustOf = ({ from }: Made) => trust[String(from)] ?? 0;

function trustOfOccasion(made: Made): number {
  if (made.occasion === null) return 0;
  // of a sheet without moments, whose rows stand on the day of their surgery: nobody said "other"
  if (made.occasion === "other" && made.from !== "recorded") return 0.5;
  return made.from === null ? 3 : trustOf(made);
}

/** What a body measure has to say of how it was made where another word on the same person and day stands. */
export function saidBeside(other: Made, own: Made): Made {
  return {
    from: trustOf(own) < trustOf(other) ? null : own.from,
    occasion: trustOfOccasion(own) < trustOfOccasion(other) ? null : own.occasion,
  };
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
