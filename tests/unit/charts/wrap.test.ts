import { expect, test } from "vitest";
import { wrapText } from "@/lib/charts/place/text-width";

test("a line breaks at blanks, but never inside what an interval begins with, nor between a number and what it counts", () => {
  for (let width = 60; width < 400; width += 7) {
    const lines = wrapText(
      "before 0.791 (95 % CI 0.784 to 0.798), after 0.843 (95 % CI 0.835 to 0.851; 29 patients), 3 % left out",
      13,
      width,
    );
    expect(lines.join(" ")).toBe("before 0.791 (95 % CI 0.784 to 0.798), after 0.843 (95 % CI 0.835 to 0.851; 29 patients), 3 % left out");
    for (const line of lines) {
      expect(line).not.toMatch(/^(%|CI|patients)/);
      expect(line).not.toMatch(/\(95$/);
    }
  }
});
