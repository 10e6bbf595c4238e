import { type TableName, tableNames } from "@/lib/codebook";
import type { HeldCorrection, Joined, StrippedRows } from "@/lib/intake";
import type { Join, Registry } from "@/lib/registry";

/** What the registry holds, by table, so that intake can tell new from known. */
export async function heldRows(registry: Registry): Promise<StrippedRows> {
  const rows = Object.fromEntries(tableNames.map((table) => [table, [] as unknown[]])) as Record<TableName, unknown[]>;
  for await (const { table, row } of registry.held()) rows[table].push(row);
  return rows as StrippedRows;
}

export type HeldBeside = { readonly joins: readonly Joined[]; readonly corrections: readonly HeldCorrection[] };

/** What the registry keeps beside its rows: numbers read as another's, fields corrected by hand. */
export async function heldBeside(registry: Registry): Promise<HeldBeside> {
  const joins = await registry.joins();
  const corrections = await registry.corrections();
  return {
    joins: await Promise.all(joins.map((join) => joined(registry, joins, join))),
    corrections: corrections.map(({ table, key, field, sheet, value }) => ({ table, key, field, sheet, value })),
  };
}

/** A number with the first of its patient, however many joins lie between. */
async function joined(registry: Registry, joins: readonly Join[], { person, into }: Join): Promise<Joined> {
  let [root, days] = [into, person.days];
  for (let next = joins.find((join) => join.person.entity === root); next; next = joins.find((join) => join.person.entity === root)) {
    days += next.person.days;
    root = next.into;
  }
  const first = (await registry.rowsOf(root)).find(({ table }) => table === "person")?.row.person;
  if (first === undefined) throw new RangeError("heldBeside requires a person behind every join, received none");
  return { person: person.person, as: first, days };
}
