const written = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "short", year: "numeric", hour: "2-digit", minute: "2-digit" });

/** When a batch was made, on the clock of the machine that serves the pages: `24 Nov 2026, 14:05`. */
export function timeText(iso: string): string {
  return written.format(new Date(iso));
}
