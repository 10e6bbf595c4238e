/** Widths of letters in ems, by rough class: there is no page to measure on, and a label that is guessed a little wide does no harm. */
const narrow = /[iljtfrI.,:;'|!()[\] ]/;
const wide = /[mwMW%@]/;

/** About how wide a text is set in the sans of the figures, px. Guessed on the wide side. */
export function textWidth(text: string, size: number): number {
  return [...text].reduce((sum, letter) => sum + (narrow.test(letter) ? 0.3 : wide.test(letter) ? 0.84 : 0.545), 0) * size;
}

/** Blanks at which a line may break: none before a sign of percent, nor between a number and what it counts. */
const breaks = / (?!%)(?<!% (?=CI))(?<!\d (?=(?:segment|patient|group|mm|cm|day|month)))/;

/** Breaks a text at blanks into lines of at most `width` px, but not inside `95 % CI` or `29 patients`; a word too long for a line stands alone. */
export function wrapText(text: string, size: number, width: number): string[] {
  const lines: string[] = [];
  for (const word of text.split(breaks)) {
    const last = lines.at(-1);
    if (last !== undefined && textWidth(`${last} ${word}`, size) <= width) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(word);
  }
  return lines;
}
