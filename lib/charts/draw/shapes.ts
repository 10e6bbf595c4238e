import type { Shape } from "../scene";

/**
 * Outline of a shape about its centre, of about the area of a disc of that radius, so that no shape speaks louder than another.
 * A cross is two strokes and has no area; it is as wide as the disc.
 */
export function outlineOf(shape: Exclude<Shape, "disc">, x: number, y: number, radius: number): string {
  switch (shape) {
    case "diamond": {
      const arm = radius * Math.sqrt(Math.PI / 2);
      return `M${x} ${y - arm}L${x + arm} ${y}L${x} ${y + arm}L${x - arm} ${y}Z`;
    }
    case "square": {
      const half = (radius * Math.sqrt(Math.PI)) / 2;
      return `M${x - half} ${y - half}H${x + half}V${y + half}H${x - half}Z`;
    }
    case "triangle": {
      const side = radius * Math.sqrt((4 * Math.PI) / Math.sqrt(3));
      const height = (side * Math.sqrt(3)) / 2;
      return `M${x} ${y - (2 * height) / 3}L${x + side / 2} ${y + height / 3}L${x - side / 2} ${y + height / 3}Z`;
    }
    case "cross":
      return `M${x - radius} ${y - radius}L${x + radius} ${y + radius}M${x - radius} ${y + radius}L${x + radius} ${y - radius}`;
  }
}
