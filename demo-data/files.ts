import { demoUnit } from "./scenario/unit";
import { plantedIdentifiers } from "./sheets/planted";
import { rawMapping } from "./sheets/raw-mapping";
import { rawOneSheet } from "./sheets/raw-one-sheet";
import { settings } from "./sheets/settings";
import { sevenYears } from "./sheets/seven-years";
import { tableFiles } from "./sheets/tables";
import { yearlySheet } from "./sheets/yearly";

export type DemoFile = { readonly name: string; readonly bytes: Uint8Array };

/** Every generated file of the demo, as it must stand in this folder. */
export function demoFiles(): readonly DemoFile[] {
  const persons = demoUnit();
  const { raw, clean, faults } = rawOneSheet(persons);
  return [
    utf8("seven-years.csv", sevenYears(persons)),
    raw,
    clean,
    json("raw-one-sheet.key.json", faults),
    json("raw-one-sheet.mapping.json", rawMapping),
    utf8("year-2023.csv", yearlySheet(persons, 2023)),
    utf8("year-2024.csv", yearlySheet(persons, 2024)),
    ...tableFiles(persons).map(({ name, text }) => utf8(name, text)),
    json("settings.json", settings),
    json("planted-identifiers.json", plantedIdentifiers(persons)),
  ];
}

function utf8(name: string, text: string): DemoFile {
  return { name, bytes: new TextEncoder().encode(text) };
}

function json(name: string, value: unknown): DemoFile {
  return utf8(name, `${JSON.stringify(value, null, 2)}\n`);
}
