/** A drawing as data: a layout makes it, `drawSvg` writes it, and neither computes a statistic. Lengths are CSS pixels, y runs downwards. */
export type Scene = {
  readonly width: number;
  readonly height: number;
  /** Accessible name and description. */
  readonly title: string;
  readonly description: string;
  readonly marks: readonly Mark[];
};

/** The five series in order, and the inks. A colour is a name: the drawing looks the value up, so that page, print and paper agree. */
export type Ink = "ink" | "muted" | "hairline" | "deep" | "warm" | "series1" | "series2" | "series3" | "series4" | "series5" | "paper";
export type Shape = "disc" | "diamond" | "square" | "triangle" | "cross";
export type Dash = "solid" | "long" | "dot" | "long-dot" | "short";
export type Anchor = "start" | "middle" | "end";

/**
 * What a reader hears and a pointer shows. A mark with a label can be reached by keyboard and pointer. Of marks that come by the thousand it is
 * a getter: where they crowd nobody reads it.
 */
type Labelled = { readonly label?: string };

export type SymbolMark = Labelled & {
  readonly mark: "symbol";
  readonly shape: Shape;
  readonly x: number;
  readonly y: number;
  /** Radius of the disc; other shapes are drawn as large to the eye. */
  readonly size: number;
  readonly ink: Ink;
  /** Hollow means: not comparable, or not tested. */
  readonly hollow?: boolean;
  readonly opacity?: number;
};
/** Symbols of one look that come by the thousand, as columns of one length: numbers are laid out many times faster than a mark for each. */
export type SymbolsMark = Omit<SymbolMark, "mark" | "x" | "y" | "label"> & {
  readonly mark: "symbols";
  readonly xs: ArrayLike<number>;
  readonly ys: ArrayLike<number>;
  /** What a reader hears of one of them; where they crowd nobody asks. */
  readonly labelOf: (place: number) => string;
};
export type RuleMark = Labelled & {
  readonly mark: "rule";
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly ink: Ink;
  readonly weight?: number;
  readonly dash?: Dash;
};
export type PathMark = Labelled & {
  readonly mark: "path";
  readonly d: string;
  readonly ink: Ink;
  readonly fill?: boolean;
  readonly weight?: number;
  readonly dash?: Dash;
  readonly opacity?: number;
};
export type BandMark = Labelled & {
  readonly mark: "band";
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly ink: Ink;
  readonly opacity?: number;
};
export type TextMark = {
  readonly mark: "text";
  readonly x: number;
  readonly y: number;
  readonly text: string;
  readonly ink: Ink;
  readonly size: number;
  readonly anchor?: Anchor;
  readonly font?: "serif" | "sans";
  readonly weight?: "normal" | "bold";
};

export type Mark = SymbolMark | SymbolsMark | RuleMark | PathMark | BandMark | TextMark;
/** A mark by itself, as it is drawn. */
export type SingleMark = Exclude<Mark, SymbolsMark>;
