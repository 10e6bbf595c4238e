import type { Connection } from "@/db/open";
import { countsOf } from "../counts";
import type { Counts } from "../types";
import { fromByEntity, parentsHeld } from "./row-sql";

/** How many rows held as of a batch wait for the row of their person or segment. No frame shows them, so somebody must say how many. */
export function waitingAsOf(db: Connection, batch: number): Counts {
  return countsOf((table) =>
    Number(
      db
        .prepare(`SELECT count(*) ${fromByEntity(table)} WHERE NOT (${parentsHeld(table)})`)
        .pluck()
        .get({ batch }),
    ),
  );
}
