import type { Connection } from "@/db/open";
import type { TableName } from "@/lib/codebook";
import { frameInView } from "../join/frame-in-view";
import { joinViewAsOf } from "../join/join-view";
import { stateOf } from "../keep/ledger";
import type { Frame, FrameColumn, State } from "../types";
import { type FrameRows, type MergedCells, readColumns, readRows } from "./frame";

const statesKept = 3;

type Kept = { readonly rows: FrameRows; readonly merged: MergedCells; readonly columns: Map<string, FrameColumn> };
type KeptState = Map<TableName, Kept>;

/** Reads frames and keeps their columns for the last three states asked for: a state never changes, so a column is read once. */
export type Frames = { readonly asOf: (state: State, table: TableName, columns: readonly string[]) => Frame };

/** @throws RangeError for a state that the registry can't show: a batch to come, or from before an erasure */
function requireState(db: Connection, { batch, erasures }: State): void {
  const now = stateOf(db);
  if (!Number.isInteger(batch) || batch < 0 || batch > now.batch) {
    throw new RangeError(`frameAsOf requires a batch of 0 to ${now.batch}, received ${batch}`);
  }
  if (erasures !== now.erasures) throw new RangeError(`frameAsOf requires a state after ${now.erasures} erasures, received ${erasures}`);
}

/** The rows of a frame, those of patients with several numbers merged. */
function rowsOf(db: Connection, table: TableName, batch: number): Pick<Kept, "rows" | "merged"> {
  const rows = readRows(db, table, batch);
  const view = joinViewAsOf(db, batch);
  return view === null ? { rows, merged: new Map() } : frameInView(view, table, rows);
}

export function framesOf(db: Connection): Frames {
  const states = new Map<number, KeptState>();
  let erasures = 0;

  function kept(state: State): KeptState {
    // what was erased is gone from here too
    if (state.erasures !== erasures) states.clear();
    erasures = state.erasures;
    const found = states.get(state.batch) ?? new Map();
    // put last: the first of a Map is then the one asked for longest ago
    states.delete(state.batch);
    states.set(state.batch, found);
    const [oldest] = states.keys();
    if (states.size > statesKept && oldest !== undefined) states.delete(oldest);
    return found;
  }

  return {
    asOf: (state, table, ids) => {
      requireState(db, state);
      const tables = kept(state);
      const frame: Kept = tables.get(table) ?? { ...rowsOf(db, table, state.batch), columns: new Map() };
      const missing = [...new Set(ids)].filter((id) => !frame.columns.has(id));
      for (const [id, column] of readColumns(db, frame.rows, state.batch, missing, frame.merged)) frame.columns.set(id, column);
      tables.set(table, frame);
      return { ...frame.rows, columns: Object.fromEntries([...frame.columns].filter(([id]) => ids.includes(id))) };
    },
  };
}
