import type { Connection } from "@/db/open";
import type { TableName } from "@/lib/codebook";
import { type Cell, layoutOf } from "../commit/cells";
import { type Group, groupsAsOf } from "./groups";
import { type MergedRow, mergedRows } from "./merged-rows";

/** The patients with several numbers as of a batch, and how their rows are read. */
export type JoinView = {
  readonly groups: readonly Group[];
  /** The patient that a person's entity, or its name, belongs to, if it has several numbers. */
  readonly groupOf: (person: number) => Group | undefined;
  readonly isJoined: (name: string) => boolean;
  /** Rows of a table of a patient, merged; visits and events under the segment that holds for all of its numbers. */
  readonly rowsOf: (table: TableName, group: Group) => readonly MergedRow[];
};

const segmentKey = ["bone", "side", "surgeryDay"];

function segmentName(table: TableName, cells: readonly Cell[]): string {
  const { fields } = layoutOf(table);
  return segmentKey.map((id) => cells[fields.findIndex(([field]) => field === id)] ?? "").join("|");
}

/** `null` when no patient has several numbers, so that nothing is slower for it. */
export function joinViewAsOf(db: Connection, batch: number): JoinView | null {
  const groups = groupsAsOf(db, batch);
  if (groups.length === 0) return null;
  const byPerson = new Map(groups.flatMap((group) => group.members.map(({ entity }) => [entity, group] as const)));
  const names = new Set(groups.flatMap((group) => group.members.map(({ person }) => person)));

  function underItsSegment(table: "visit" | "event", group: Group): readonly MergedRow[] {
    const segments = new Map(mergedRows(db, "segment", batch, group).map((row) => [segmentName("segment", row.cells), row.entity]));
    return mergedRows(db, table, batch, group).map((row) => ({
      ...row,
      segment: row.segment === null ? null : (segments.get(segmentName(table, row.cells)) ?? row.segment),
    }));
  }

  const kept = new Map<string, readonly MergedRow[]>();
  const read = (table: TableName, group: Group) =>
    table === "visit" || table === "event" ? underItsSegment(table, group) : mergedRows(db, table, batch, group);
  return {
    groups,
    groupOf: (person) => byPerson.get(person),
    isJoined: (name) => names.has(name),
    rowsOf: (table, group) => {
      const name = `${table} ${group.root.entity}`;
      const rows = kept.get(name) ?? read(table, group);
      kept.set(name, rows);
      return rows;
    },
  };
}
