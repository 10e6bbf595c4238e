import { firstOf } from "@/lib/answers";
import type { Join, Registry } from "@/lib/registry";
import type { Beside } from "../_talk/beside";

/** What a tab needs beside the rows held, so that it can tell news from what was joined or corrected. */
export async function besideOf(registry: Registry): Promise<Beside> {
  const joins = await registry.joins();
  const corrections = await registry.corrections();
  return {
    joins: await Promise.all(
      joins.map(async (join) => ({ person: join.person.person, as: await firstName(registry, joins, join), days: daysOf(joins, join) })),
    ),
    corrections: corrections.map(({ table, key, field, sheet, value }) => ({ table, key, field, sheet, value })),
  };
}

/** The pseudonym of the patient's first number. */
async function firstName(registry: Registry, joins: readonly Join[], { person }: Join): Promise<string> {
  const rows = await registry.rowsOf(firstOf(joins, person.entity));
  return rows[0]?.row.person ?? person.person;
}

/** Days to the line of the first number, however many joins lie between. */
function daysOf(joins: readonly Join[], { person, into }: Join): number {
  const next = joins.find((join) => join.person.entity === into);
  return person.days + (next ? daysOf(joins, next) : 0);
}
