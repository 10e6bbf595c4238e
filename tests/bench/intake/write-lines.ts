import { closeSync, openSync, writeSync } from "node:fs";
import { countFindings, encodeCommit, keyRing, prepare, readSheet, unitKeyOf } from "@/lib/intake";
import { oneSheet } from "./one-sheet";

// The tab's part of the memory bench, in a process of its own: a sheet of other persons each time, as the lines of a commit.
const [rows = "0", firstCopy = "0", file = ""] = process.argv.slice(2);
const { sheet } = readSheet(oneSheet(Number(rows), Number(firstCopy)), { file: "sheet.csv" });
if (!sheet) throw new Error("the sheet was refused");
const ring = keyRing(unitKeyOf(new Uint8Array(32).fill(7)));
const prepared = await prepare({ sheets: [sheet], ring, today: { year: 2026, month: 11, day: 25 } });
const out = openSync(file, "w");
for (const text of encodeCommit({ rows: prepared.rows, findings: countFindings(prepared.findings) })) writeSync(out, text);
closeSync(out);
