import { isWide } from "../figure/figure";

export type PanelPlace = { readonly x: number; readonly width: number; readonly row: number };

const gapPx = 36;

/** Where small multiples stand: two beside each other on a wide sheet, one under the other on a phone. */
export function panelPlaces(count: number, width: number, { across = isWide(width) ? 2 : 1 } = {}): readonly PanelPlace[] {
  const columns = Math.max(1, Math.min(count, across));
  const each = (width - gapPx * (columns - 1)) / columns;
  return Array.from({ length: count }, (_, index) => ({
    x: (index % columns) * (each + gapPx),
    width: each,
    row: Math.floor(index / columns),
  }));
}

/** Items by the row of their panel. */
export function rowsOf<T>(items: readonly T[], places: readonly PanelPlace[]): readonly (readonly { item: T; place: PanelPlace }[])[] {
  const placed = items.map((item, index) => ({ item, place: places[index] ?? { x: 0, width: 0, row: 0 } }));
  const rows = Math.max(-1, ...places.map(({ row }) => row)) + 1;
  return Array.from({ length: rows }, (_, row) => placed.filter(({ place }) => place.row === row));
}
