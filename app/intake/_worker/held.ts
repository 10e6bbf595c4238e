import { byTable, fieldsOf, type TableName, type Value } from "@/lib/codebook";
import type { StrippedRows } from "@/lib/intake";
import { askServer } from "./ask-server";
import { linesOf } from "./lines";
import type { Session, Work } from "./session";

const rowsAPace = 2000;
// what isn't recorded doesn't travel
const blanks = byTable((table) => Object.fromEntries(fieldsOf(table).map(([id]) => [id, null])));

/** What the registry holds, stripped rows all: brought down so that nothing need go up to know what is new. */
export async function heldRows(session: Session, { signal, pace }: Work): Promise<StrippedRows> {
  if (session.held) return session.held;
  const response = await askServer("/intake/held", { signal });
  const rows = byTable((): object[] => []);
  const of = Number(response.headers.get("x-rows") ?? 0);
  let done = 0;
  let ended = false;
  for await (const line of linesOf(response.body)) {
    const { table, row, end } = JSON.parse(line) as { table?: TableName; row?: Readonly<Record<string, Value>>; end?: number };
    if (table) rows[table].push({ ...blanks[table], ...row });
    ended = end !== undefined;
    if (++done % rowsAPace === 0) pace({ step: "held", done, of });
  }
  // half of what is held would let known rows pass for new ones
  if (!ended) throw new RangeError("heldRows requires all that the registry holds, received a part");
  // what is held passed the check of stripped rows when it came in
  session.held = rows as Record<TableName, readonly object[]> as StrippedRows;
  return session.held;
}
