/** Up to this share of the room a pile stands as it is. */
const untouchedShare = 0.6;

/**
 * Presses the upper part of piles that don't fit: what lies low stays where it is, what lies above closes up evenly, so that one heap of
 * equal values doesn't make all other marks specks. Marks of a pressed part lie over each other, and each is still one.
 * @example press([5, 50, 200], 100, 5) // => [5, 50, 95]
 */
export function press(heights: readonly number[], heightPx: number, radius: number): number[] {
  const highest = heights.reduce((a, b) => Math.max(a, b), 0);
  const room = heightPx - radius;
  if (highest <= room) return [...heights];
  const knee = untouchedShare * room;
  const rate = (room - knee) / (highest - knee);
  return heights.map((height) => (height <= knee ? height : knee + (height - knee) * rate));
}
