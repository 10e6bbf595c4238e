import { fieldsOf, type Rows, type TableName } from "@/lib/codebook";
import type { Stripped, StrippedRows } from "@/lib/intake";

const alphabet = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/** A pseudonym of a number, as the strip step would give one. */
export function person(number: number): string {
  let text = "";
  for (let rest = number; text.length < 26; rest = Math.floor(rest / 32)) text = alphabet[rest % 32] + text;
  return text;
}

/** A row of a table with nothing recorded but what is said: rows for tests of arithmetic, never a clinical figure. */
export function row<T extends TableName>(table: T, held: Partial<Rows[T]>): Stripped<T> {
  const blank = Object.fromEntries(fieldsOf(table).map(([id]) => [id, null]));
  const made: object = { ...blank, ...held };
  return made as Stripped<T>;
}

export function rowsOf(held: Partial<StrippedRows>): StrippedRows {
  return { person: [], bodyMeasure: [], segment: [], visit: [], event: [], score: [], ...held };
}

export function aPerson(number: number, held: Partial<Rows["person"]> = {}): Stripped<"person"> {
  return row("person", { person: person(number), unit: "unit-1", line: "dated", ...held });
}

/** A femur, lengthened on day 0 of the person's line. */
export function aFemur(number: number, held: Partial<Rows["segment"]> = {}): Stripped<"segment"> {
  return row("segment", {
    person: person(number),
    bone: "femur",
    side: "left",
    surgeryDay: 0,
    surgeryYear: 2020,
    distractionStartDay: 7,
    ...held,
  });
}
