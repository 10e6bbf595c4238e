/**
 * Slanted lines within a rectangle, as the path of their strokes: a ground that is seen without colour.
 * @example hatch({ x: 0, y: 0, width: 4, height: 4 }, 4) // => "M0 4L4 0"
 */
export function hatch({ x, y, width, height }: { x: number; y: number; width: number; height: number }, gap: number): string {
  const lines: string[] = [];
  // each line rises to the right from the foot or the left side, and ends at the top or the right side
  for (let start = gap; start < width + height; start += gap) {
    const [fromX, fromY] = start <= height ? [0, start] : [start - height, height];
    const [toX, toY] = start <= width ? [start, 0] : [width, start - width];
    lines.push(`M${x + fromX} ${y + fromY}L${x + toX} ${y + toY}`);
  }
  return lines.join("");
}
