import type { Registry } from "@/lib/registry";
import { columnOf, valueAt } from "../frames/read";
import { type CasebookQuestion, casebook } from "./casebook";

/** The number of each case with the pseudonym under which it is held, so that whoever has the unit's key can tell in the tab which case is whom. */
export type CasebookKeys = {
  readonly keys: readonly (readonly [number: number, pseudonym: string])[];
  /** The numbers of the cases that the question names. */
  readonly listed: readonly number[];
};

/** @throws RangeError as `casebook` does */
export async function casebookKeys(registry: Registry, asked: CasebookQuestion): Promise<CasebookKeys> {
  const { caseNumbers } = await casebook(registry, { ...asked, columns: [], from: 0, limit: 0 });
  const frame = await registry.frameAsOf(await registry.state(), "person", ["person"]);
  const column = columnOf(frame, "person");
  const keys = Array.from(frame.entity, (entity, row) => [entity, String(valueAt(column, row))] as const);
  return { keys, listed: caseNumbers };
}
