import type { Choice } from "../_client/sentence";

/** Days from surgery at which a clock of healing may start; `none`: where the clock itself starts. */
export const landmarks = ["none", "60", "90", "120", "180", "270"] as const;

export const landmarkChoices: readonly Choice[] = landmarks.map((day) => ({
  value: day,
  text: day === "none" ? "its own start" : `day ${day} after surgery`,
}));

/** What a place is asked with. */
export function landmarkOf(word: (typeof landmarks)[number]): { readonly landmark?: number } {
  return word === "none" ? {} : { landmark: Number(word) };
}
