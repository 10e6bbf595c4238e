import { hasR, scriptNames, storedAnswers } from "./r-scripts";

/** Without R the run must not look like a whole one: the last line says what was not compared. */
export function setup(): void {
  if (hasR()) return;
  const comparisons = scriptNames().reduce((sum, name) => sum + Object.keys(storedAnswers(name).answers).length, 0);
  process.on("exit", () => console.error(`\n*** not run: no R, ${comparisons} comparisons not made ***`));
}
