import type { Ink } from "../scene";

/**
 * The inks on paper. A file that stands alone is right by these; on a page the class of a mark lets the dark ground exchange them.
 * The nearest pair of series is 31.9 apart (CIE76) in every kind of colour vision, and each is at least 3 : 1 on paper.
 */
export const inks: Readonly<Record<Ink, string>> = {
  ink: "#1B1A18",
  muted: "#5B574F",
  hairline: "#D8D3C6",
  deep: "#0A5A62",
  warm: "#A8480E",
  series1: "#0A5A62",
  series2: "#BB7E28",
  series3: "#49257E",
  series4: "#929379",
  series5: "#7B0609",
  paper: "#FCFBF8",
};

/** Fonts by name, then what a reader without them has. */
export const fonts = {
  sans: "'Source Sans 3 Variable', 'Source Sans 3', 'Helvetica Neue', Arial, sans-serif",
  serif: "'Source Serif 4 Variable', 'Source Serif 4', Georgia, 'Times New Roman', serif",
} as const;
