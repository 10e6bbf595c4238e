import type { Person } from "./scenario/types";
import { demoUnit } from "./scenario/unit";
import { plantedIdentifiers } from "./sheets/planted";
import { rawMapping } from "./sheets/raw-mapping";
import { rawOneSheet } from "./sheets/raw-one-sheet";
import { rawTables } from "./sheets/raw-tables";
import { rawWorkbook } from "./sheets/raw-workbook";
import { settings } from "./sheets/settings";
import { sevenYears } from "./sheets/seven-years";
import { tableFiles } from "./sheets/tables";
import { yearlySheet } from "./sheets/yearly";

export type DemoFile = { readonly name: string; readonly bytes: Uint8Array };

/** Every generated file of the demo, as it must stand in this folder. */
export function demoFiles(): readonly DemoFile[] {
  const persons = demoUnit();
  return [
    utf8("seven-years.csv", sevenYears(persons)),
    ...tableFiles(persons).map(({ name, text }) => utf8(name, text)),
    ...rawFiles(persons),
    utf8("year-2023.csv", yearlySheet(persons, 2023)),
    utf8("year-2024.csv", yearlySheet(persons, 2024)),
    json("settings.json", settings),
    json("planted-identifiers.json", plantedIdentifiers(persons)),
  ];
}

/** The sheets as the unit keeps them, their clean twins, and the key to the forty faults. */
function rawFiles(persons: readonly Person[]): readonly DemoFile[] {
  const oneSheet = rawOneSheet(persons);
  const tables = rawTables(persons);
  const workbook = rawWorkbook(persons);
  return [
    oneSheet.raw,
    oneSheet.clean,
    json("raw-one-sheet.key.json", oneSheet.faults),
    json("raw-one-sheet.mapping.json", rawMapping),
    ...tables.flatMap(({ name, raw, clean }) => [utf8(`${name}.csv`, raw), utf8(`${name}.clean.csv`, clean)]),
    { name: "raw-workbook.xlsx", bytes: workbook.raw },
    { name: "raw-workbook.clean.xlsx", bytes: workbook.clean },
    json("raw.key.json", [...oneSheet.faults, ...tables.flatMap(({ faults }) => faults), ...workbook.faults]),
  ];
}

function utf8(name: string, text: string): DemoFile {
  return { name, bytes: new TextEncoder().encode(text) };
}

function json(name: string, value: unknown): DemoFile {
  return utf8(name, `${JSON.stringify(value, null, 2)}\n`);
}
