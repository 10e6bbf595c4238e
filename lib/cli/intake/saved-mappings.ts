import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { type Mapping, mappingFor, mappingName, mappingToKeep, parseMapping, type SavedMapping, type Sheet } from "@/lib/intake";

/** The folder of a registry's mappings, kept for the next file of that shape. */
function folderOf(registry: string): string {
  return path.join(registry, "mappings");
}

/** The mappings of a registry by name; what is no mapping is passed over. */
export function savedMappings(registry: string): readonly SavedMapping[] {
  return filesIn(folderOf(registry)).flatMap((file) => {
    try {
      const mapping = parseMapping(JSON.parse(readFileSync(path.join(folderOf(registry), file), "utf8")));
      return [{ name: file, mapping }];
    } catch {
      return [];
    }
  });
}

function filesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder)
      .filter((file) => file.endsWith(".json"))
      .sort();
  } catch {
    return [];
  }
}

/** Each sheet's saved mapping, where one fits. */
export function chooseMappings(sheets: readonly Sheet[], saved: readonly SavedMapping[]): readonly { file: string; saved: SavedMapping }[] {
  return sheets.flatMap((sheet) => {
    const found = mappingFor(sheet, saved);
    return found ? [{ file: sheet.file, saved: found }] : [];
  });
}

/** Keeps the mapping of each sheet in the registry's folder, under a name of its headers; nothing in which a detector sees a person. */
export function keepMappings(registry: string, mappings: readonly Mapping[]): readonly string[] {
  const names: string[] = [];
  for (const mapping of mappings.map(mappingToKeep).filter(({ columns }) => Object.keys(columns).length > 0)) {
    mkdirSync(folderOf(registry), { recursive: true, mode: 0o700 });
    const name = `${mappingName(mapping)}.json`;
    saveMapping(path.join(folderOf(registry), name), mapping);
    names.push(name);
  }
  return names;
}

export function saveMapping(file: string, mapping: Mapping): void {
  writeFileSync(file, `${JSON.stringify(mappingToKeep(mapping), null, 2)}\n`, { mode: 0o600 });
}
