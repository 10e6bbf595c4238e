import { readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { lengthbook } from "../lengthbook";

/** Sizes at which every figure is looked at. */
export const sizes = ["twelve", "demo", "five-thousand", "one-patient"] as const;
export type Size = (typeof sizes)[number];

type Sheet = { readonly header: string; readonly rows: readonly string[] };
const persons = readSheet("seven-years");
const further = ["tables/body-measures", "tables/visits", "tables/scores"];
const gainColumn = persons.header.split(",").indexOf("gain_mm");

/** Brings so many segments of the invented unit in by the command line, with visits and scores; answers with the folder. */
export async function registryOf(size: Size, folder: string): Promise<string> {
  const [secret, data] = [path.join(folder, `${size}.txt`), path.join(folder, `${size}.data`)];
  writeFileSync(secret, "invented unit, open key\n", { mode: 0o600 });
  await lengthbook(data, ["settings", "--set", "demo-data/settings.json"]);
  const rows = rowsOf(size);
  const ids = new Set(rows.map(idOf));
  const copies = size === "five-thousand" ? Math.floor(5000 / persons.rows.length) : 0;
  const sheets = [{ header: persons.header, rows: copies === 0 ? rows : told(rows, copies) }, ...further.map(readSheet)];
  for (const [i, { header, rows: all }] of sheets.entries()) {
    const own = i === 0 ? all : all.filter((row) => ids.has(idOf(row)));
    const file = path.join(folder, `${size}-${i}.csv`);
    writeFileSync(file, `${[header, ...(i === 0 || copies === 0 ? own : told(own, copies))].join("\n")}\n`);
    await lengthbook(data, ["intake", file, "--dates", "ymd", "--passphrase-file", secret, "--json"]);
  }
  return data;
}

function readSheet(name: string): Sheet {
  const [header = "", ...rows] = readFileSync(`demo-data/${name}.csv`, "utf8").trimEnd().split("\n");
  return { header, rows };
}

const idOf = (row: string) => row.slice(0, row.indexOf(","));

/** Of the smallest, the rows of the first person with four segments. */
function rowsOf(size: Size): readonly string[] {
  const { rows } = persons;
  if (size === "twelve") return rows.slice(200, 212);
  if (size !== "one-patient") return rows;
  const one = rows.find((row) => rows.filter((other) => idOf(other) === idOf(row)).length === 4);
  return rows.filter((row) => one !== undefined && idOf(row) === idOf(one));
}

/** The same rows again and again, of other persons, with gains a little apart. */
function told(rows: readonly string[], copies: number): readonly string[] {
  return Array.from({ length: copies }, (_, copy) => rows.map((row) => `${100 + copy}${apart(row, copy)}`)).flat();
}

function apart(row: string, copy: number): string {
  const cells = row.split(",");
  const gain = Number(cells[gainColumn]);
  if (cells.length === persons.header.split(",").length && gain > 10) cells[gainColumn] = (gain - (copy % 5) * 0.7).toFixed(1);
  return cells.join(",");
}
