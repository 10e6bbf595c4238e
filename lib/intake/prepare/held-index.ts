import { type TableName, tableNames } from "@/lib/codebook";
import type { StrippedRows } from "../types";
import type { AnyRow } from "./blank-row";
import { rowKey } from "./row-key";

/** What the registry holds, by natural key, and its segments by bone and side of a person. */
export type HeldIndex = {
  readonly rows: Readonly<Record<TableName, ReadonlyMap<string, AnyRow>>>;
  readonly surgeries: ReadonlyMap<string, readonly number[]>;
};

export function heldIndex(held: StrippedRows): HeldIndex {
  const rows = Object.fromEntries(
    tableNames.map((table) => [table, new Map(held[table].map((row) => [rowKey(table, row), row as AnyRow]))]),
  );
  const surgeries = new Map<string, number[]>();
  for (const row of held.segment) {
    const limb = limbKey(row);
    const known = surgeries.get(limb);
    if (known) known.push(row.surgeryDay);
    else surgeries.set(limb, [row.surgeryDay]);
  }
  return { rows: rows as unknown as HeldIndex["rows"], surgeries };
}

/** A person's bone of one side. */
export function limbKey({ person, bone, side }: { person?: unknown; bone?: unknown; side?: unknown }): string {
  return `${person}|${bone}|${side}`;
}
