const longest = 60;

/**
 * A name as people type it, as cohorts have it: `Magnetic nails, 2022` → `magnetic-nails-2022`; `null` when no letter or digit is in it.
 * @example nameFrom("Magnetic nails, 2022") // => "magnetic-nails-2022"
 */
export function nameFrom(typed: string): string | null {
  const name = typed
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .toLowerCase()
    .replace(/[^0-9a-z]+/g, "-")
    .slice(0, longest)
    .replace(/^-+|-+$/g, "");
  return name === "" ? null : name;
}
