/**
 * A number with fixed decimals, a true minus sign, no minus before nothing, and its thousands apart from ten thousand on.
 * @example decimals(-0.04, 1) // => "0.0"
 * @example decimals(-2.06, 1) // => "−2.1"
 * @example decimals(43129.4, 1) // => "43\u202f129.4"
 */
export function decimals(value: number, digits: number): string {
  const text = Math.abs(value).toFixed(digits);
  const apart = Number(text) < 10_000 ? text : text.replace(/(?<!\..*)\B(?=(\d{3})+(\.|$))/g, "\u202f");
  return value < 0 && Number(text) !== 0 ? `−${apart}` : apart;
}

/**
 * A count, its thousands apart from ten thousand on.
 * @example grouped(9999) // => "9999"
 * @example grouped(50000) // => "50\u202f000"
 */
export function grouped(n: number): string {
  return decimals(n, 0);
}

/**
 * A count with its noun; `plural` when adding an s is wrong.
 * @example counted(1, "segment") // => "1 segment"
 * @example counted(29, "patient") // => "29 patients"
 */
export function counted(n: number, noun: string, plural = `${noun}s`): string {
  return `${grouped(n)} ${n === 1 ? noun : plural}`;
}

/** `41 segments in 29 patients`. */
export function countedIn(segments: number, patients: number): string {
  return `${counted(segments, "segment")} in ${counted(patients, "patient")}`;
}

/**
 * Words in a row.
 * @example listed(["a", "b", "c"]) // => "a, b and c"
 */
export function listed(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
