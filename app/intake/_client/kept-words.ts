import { emptyMapping, type Mapping, mappingToKeep, parseMapping } from "@/lib/intake";

const name = "lengthbook/intake/mapping";

/** What this tab was told of columns and answers before a reload. Nothing of a row is among it. */
export function recallMapping(): Mapping {
  try {
    const text = sessionStorage.getItem(name);
    return text === null ? emptyMapping : parseMapping(JSON.parse(text));
  } catch {
    return emptyMapping;
  }
}

/** Keeps it for a reload of this tab, after the detectors have passed headers and spellings. */
export function rememberMapping(mapping: Mapping): void {
  try {
    sessionStorage.setItem(name, JSON.stringify(mappingToKeep(mapping)));
  } catch {
    // a browser that keeps nothing asks again after a reload
  }
}

export function forgetMapping(): void {
  try {
    sessionStorage.removeItem(name);
  } catch {
    // nothing was kept
  }
}
