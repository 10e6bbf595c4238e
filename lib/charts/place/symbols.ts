import type { Mark, SingleMark, SymbolMark, SymbolsMark } from "../scene";

/** More names than these nobody walks through, and a page of them is slow to come. */
export const mostNamed = 2000;

/** Symbols of one look at their places: a mark each, or all in one where they are too many to have names. */
export function symbolMarks(symbols: Omit<SymbolsMark, "mark">): Mark[] {
  const all: SymbolsMark = { mark: "symbols", ...symbols };
  return all.xs.length > mostNamed ? [all] : apart(all);
}

/** Each mark by itself. */
export function apart(mark: Mark): SingleMark[] {
  return mark.mark === "symbols" ? Array.from(mark.xs, (_, place) => symbolAt(mark, place)) : [mark];
}

/** One of the symbols. */
export function symbolAt({ xs, ys, labelOf, ...look }: SymbolsMark, place: number): SymbolMark {
  return {
    ...look,
    mark: "symbol",
    x: xs[place] as number,
    y: ys[place] as number,
    get label() {
      return labelOf(place);
    },
  };
}
