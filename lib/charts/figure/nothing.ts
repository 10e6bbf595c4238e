import type { Mark, Scene } from "../scene";

/** A figure of nothing: it says so, and no axis stands under it. */
export function nothingScene(text: Pick<Scene, "width" | "title">, what = "No segment in this cohort."): Scene {
  const mark: Mark = { mark: "text", x: 0, y: 14, text: what, ink: "muted", size: 13.5 };
  return { ...text, description: what, height: 24, marks: [mark] };
}
