/** A labelled mark of a drawing, with its centre in the drawing's own units. */
export type Placed = { readonly element: SVGGraphicsElement; readonly label: string; readonly x: number; readonly y: number };

const placed = new WeakMap<SVGSVGElement, readonly Placed[]>();

/** The labelled marks of a drawing in their order, read once. */
export function marksOf(svg: SVGSVGElement): readonly Placed[] {
  const known = placed.get(svg);
  if (known) return known;
  const marks = [...svg.querySelectorAll<SVGGraphicsElement>("[data-mark]")].map((element) => {
    const box = element.getBBox();
    return { element, label: element.getAttribute("aria-label") ?? "", x: box.x + box.width / 2, y: box.y + box.height / 2 };
  });
  placed.set(svg, marks);
  return marks;
}

const reachPx = 14;

/** The mark nearest to a point of the screen, if one is within reach. */
export function nearestMark(svg: SVGSVGElement, clientX: number, clientY: number): number | null {
  const toDrawing = svg.getScreenCTM()?.inverse();
  if (!toDrawing) return null;
  const point = new DOMPoint(clientX, clientY).matrixTransform(toDrawing);
  let nearest: number | null = null;
  let least = (reachPx * toDrawing.a) ** 2;
  for (const [index, mark] of marksOf(svg).entries()) {
    const distance = (mark.x - point.x) ** 2 + (mark.y - point.y) ** 2;
    if (distance < least) [nearest, least] = [index, distance];
  }
  return nearest;
}

/** The mark to which a key walks; `null` when the key doesn't walk. */
export function walk(key: string, current: number | null, count: number): number | null {
  const last = count - 1;
  const from = current ?? -1;
  switch (key) {
    case "ArrowRight":
    case "ArrowDown":
      return Math.min(last, from + 1);
    case "ArrowLeft":
    case "ArrowUp":
      return Math.max(0, from - 1);
    case "Home":
      return 0;
    case "End":
      return last;
    case "PageDown":
      return Math.min(last, from + 10);
    case "PageUp":
      return Math.max(0, from - 10);
    default:
      return null;
  }
}
