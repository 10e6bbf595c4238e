import { demoUnit } from "./scenario/unit";
import { sevenYears } from "./sheets/seven-years";

export type DemoFile = { readonly name: string; readonly bytes: Uint8Array };

/** Every generated file of the demo, as it must stand in this folder. */
export function demoFiles(): readonly DemoFile[] {
  const persons = demoUnit();
  return [utf8("seven-years.csv", sevenYears(persons))];
}

function utf8(name: string, text: string): DemoFile {
  return { name, bytes: new TextEncoder().encode(text) };
}
