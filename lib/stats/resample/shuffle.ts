import type { Random } from "./random";

/** Shuffles `items` from `start` (included) to `end` (left out) in place, every order equally likely (Fisher–Yates). */
export function shuffleInPlace(items: { length: number; [index: number]: number }, random: Random, start = 0, end = items.length): void {
  for (let i = end - 1; i > start; i--) {
    const j = start + random.below(i - start + 1);
    const held = items[i] as number;
    items[i] = items[j] as number;
    items[j] = held;
  }
}
