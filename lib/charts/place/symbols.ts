import type { Mark, SingleMark, SymbolMark, SymbolsMark } from "../scene";

/** More names than these nobody walks through, and a page of them is slow to come. */
export const mostNamed = 2000;

/** Symbols of one look at their places: a mark each, or all in one where they are too many to have names. */
export function symbolMarks(symbols: Omit<SymbolsMark, "mark">): Mark[] {
  const all: SymbolsMark = { mark: "symbols", ...symbols };
  return all.xs.length > mostNamed ? [all] : apart(all);
}

/** What symbols that are drawn together share. */
export type Look = Omit<SymbolsMark, "mark" | "xs" | "ys" | "labelOf">;
type Looks = Pick<SymbolsMark, "xs" | "ys" | "labelOf"> & {
  /** One of a few looks, the same object for all that share it. */
  readonly lookOf: (place: number) => Look;
};

/** Symbols of several looks, each after the one before; where they are too many to have names, those of one look together. */
export function symbolMarksByLook({ xs, ys, labelOf, lookOf }: Looks): Mark[] {
  if (xs.length <= mostNamed) return Array.from(xs, (_, place) => symbolAt({ mark: "symbols", ...lookOf(place), xs, ys, labelOf }, place));
  const places = new Map<Look, number[]>();
  for (let place = 0; place < xs.length; place++) {
    const look = lookOf(place);
    const held = places.get(look);
    if (held) held.push(place);
    else places.set(look, [place]);
  }
  const pick = (column: ArrayLike<number>, own: readonly number[]) => own.map((place) => column[place] as number);
  return [...places].map(
    ([look, own]): Mark => ({
      mark: "symbols",
      ...look,
      xs: pick(xs, own),
      ys: pick(ys, own),
      labelOf: (nth) => labelOf(own[nth] as number),
    }),
  );
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
