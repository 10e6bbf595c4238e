import type { Join, Registry } from "@/lib/registry";
import { columnOf, valueAt } from "../frames/read";
import { type CasebookQuestion, casebook } from "./casebook";

/** The number of each case with the pseudonym under which it is held, so that whoever has the unit's key can tell in the tab which case is whom. */
export type CasebookKeys = {
  /** A case with several numbers stands once for each; `own` is the number that the pseudonym had, or would have, as a case of its own. */
  readonly keys: readonly (readonly [number: number, pseudonym: string, own: number])[];
  /** The numbers of the cases that the question names. */
  readonly listed: readonly number[];
};

/** @throws RangeError as `casebook` does */
export async function casebookKeys(registry: Registry, asked: CasebookQuestion): Promise<CasebookKeys> {
  const { caseNumbers } = await casebook(registry, { ...asked, columns: [], from: 0, limit: 0 });
  const frame = await registry.frameAsOf(await registry.state(), "person", ["person"]);
  const column = columnOf(frame, "person");
  const firsts = Array.from(frame.entity, (entity, row) => [entity, String(valueAt(column, row)), entity] as const);
  const joins = await registry.joins();
  const seconds = joins.map(({ person }) => [firstOf(joins, person.entity), person.person, person.entity] as const);
  return { keys: [...firsts, ...seconds], listed: caseNumbers };
}

/** The case as which a number is read. */
export function firstOf(joins: readonly Join[], entity: number): number {
  const into = joins.find(({ person }) => person.entity === entity)?.into;
  return into === undefined ? entity : firstOf(joins, into);
}
