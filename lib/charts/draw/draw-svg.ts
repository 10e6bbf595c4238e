import type { BandMark, Dash, Ink, PathMark, RuleMark, Scene, SingleMark, SymbolMark, TextMark } from "../scene";
import { attributesOf, cutPath } from "./attributes";
import { asCrowd } from "./crowd";
import { escapeXml } from "./escape";
import { fonts, inks } from "./inks";
import { outlineOf } from "./shapes";

/**
 * Writes a scene as SVG. The string is the figure: the same bytes on a page, in a file, at the command line and on paper. Colours are
 * presentation attributes, since a strict content policy refuses `style`; each mark also bears the class of its ink, by which a page
 * can recolour it. A labelled mark bears `data-mark`, its place among the labelled ones, and `aria-label`.
 * @example drawSvg({ width: 10, height: 10, title: "t", description: "d", marks: [] }).startsWith("<svg xmlns=") // => true
 */
export function drawSvg(scene: Scene): string {
  const { width, height, title, description, marks: all } = asCrowd(scene);
  const open = attributesOf({
    xmlns: "http://www.w3.org/2000/svg",
    width,
    height,
    viewBox: `0 0 ${width} ${height}`,
    "font-family": fonts.sans,
    role: "img",
  });
  const labels = counter();
  const marks = all.map((mark) => drawMark(mark, labels));
  return `<svg${open}><title>${escapeXml(title)}</title><desc>${escapeXml(description)}</desc>\n${marks.join("\n")}\n</svg>`;
}

function counter(): () => number {
  let next = 0;
  return () => next++;
}

function drawMark(mark: SingleMark, nextLabel: () => number): string {
  if (mark.mark === "text") return drawText(mark);
  const { label } = mark;
  const named: Named = label === undefined ? {} : { role: "img", "data-mark": nextLabel(), "aria-label": label };
  switch (mark.mark) {
    case "symbol":
      return drawSymbol(mark, named);
    case "rule":
      return drawRule(mark, named);
    case "path":
      return drawPath(mark, named);
    case "band":
      return drawBand(mark, named);
  }
}

type Named = { role?: "img"; "data-mark"?: number; "aria-label"?: string };

function drawSymbol({ shape, x, y, size, ink, hollow, opacity }: SymbolMark, named: Named): string {
  const own = shape === "cross" ? { ...strokeOf(ink, 1.5), fill: "none" } : hollow ? hollowOf(ink) : fillOf(ink);
  const painted = { ...own, opacity };
  if (shape === "disc") return `<circle${attributesOf({ cx: x, cy: y, r: size, ...painted, ...named })}/>`;
  return `<path${attributesOf({ d: cutPath(outlineOf(shape, x, y, size)), ...painted, ...named })}/>`;
}

function drawRule({ x1, y1, x2, y2, ink, weight = 1, dash }: RuleMark, named: Named): string {
  return `<line${attributesOf({ x1, y1, x2, y2, ...strokeOf(ink, weight), "stroke-dasharray": dashes[dash ?? "solid"], ...named })}/>`;
}

function drawPath({ d, ink, fill, weight = 1, dash, opacity }: PathMark, named: Named): string {
  const painted = fill ? fillOf(ink) : { ...strokeOf(ink, weight), fill: "none", "stroke-dasharray": dashes[dash ?? "solid"] };
  return `<path${attributesOf({ d: cutPath(d), ...painted, opacity, ...named })}/>`;
}

function drawBand({ x, y, width, height, ink, opacity }: BandMark, named: Named): string {
  return `<rect${attributesOf({ x, y, width, height, ...fillOf(ink), opacity, ...named })}/>`;
}

function drawText({ x, y, text, ink, size, anchor, font, weight }: TextMark): string {
  const attributes = {
    x,
    y,
    ...fillOf(ink),
    "font-family": font === "serif" ? fonts.serif : undefined,
    "font-size": size,
    "font-weight": weight === "bold" ? 600 : undefined,
    "text-anchor": anchor === undefined || anchor === "start" ? undefined : anchor,
  };
  return `<text${attributesOf(attributes)}>${escapeXml(text)}</text>`;
}

const fillOf = (ink: Ink) => ({ class: `fill-${ink}`, fill: inks[ink] });
const hollowOf = (ink: Ink) => ({ ...strokeOf(ink, 1.5), class: `stroke-${ink} fill-paper`, fill: inks.paper });
const strokeOf = (ink: Ink, weight: number) => ({ class: `stroke-${ink}`, stroke: inks[ink], "stroke-width": weight });
const dashes: Readonly<Record<Dash, string | undefined>> = {
  solid: undefined,
  long: "8 4",
  dot: "1.5 3",
  "long-dot": "9 3 1.5 3",
  short: "4 3",
};
