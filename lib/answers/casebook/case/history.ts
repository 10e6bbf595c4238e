import { type CorrectionReason, fieldsOf, type Rows, type TableName, type Value } from "@/lib/codebook";
import type { Batch, BatchKind, RowVersion } from "@/lib/registry";
import { type Held, kindOf, shown, unitOf } from "./days";

export type FieldChange = Omit<Held, "value"> & { readonly before: Value; readonly after: Value };
/** What a batch did to one row: brought it, changed fields of it, took it away, or brought it back. */
export type RowChange = {
  readonly table: TableName;
  readonly entity: number;
  readonly what: "new" | "changed" | "gone" | "back";
  /** The row in words that a page can put together: its bone and side, its day, its type. */
  readonly of: {
    readonly bone: string | null;
    readonly side: string | null;
    readonly day: number | null;
    readonly type: string | null;
  };
  readonly fields: readonly FieldChange[];
};
export type CaseBatch = {
  readonly batch: number;
  readonly kind: BatchKind;
  readonly at: string;
  readonly undoes: number | null;
  /** Why a field was corrected, of a correction that stands. */
  readonly reason: CorrectionReason | null;
  /** Numbers of the cases that this batch joined to this one. */
  readonly joined: readonly number[];
  readonly changes: readonly RowChange[];
};
/** What stands beside the rows: corrections and joins, by the batch that made them. */
export type Beside = {
  readonly corrections: readonly { readonly since: number; readonly reason: CorrectionReason }[];
  readonly joins: readonly { readonly since: number; readonly case: number }[];
};

type Row = Readonly<Record<string, Value>>;
/** Day from which a row's days are counted. */
export type ZeroOf = (version: RowVersion) => number | null;
type Codes = (name: string) => string | null;

/** What each batch did to a case, oldest first; batches that left it as it was are none of them. */
export function historyOf(
  versions: readonly RowVersion[],
  batches: readonly Batch[],
  { asOf, zeroOf, surgeon, beside }: { readonly asOf: number; readonly zeroOf: ZeroOf; readonly surgeon: Codes; readonly beside: Beside },
): readonly CaseBatch[] {
  const changes = new Map<number, RowChange[]>();
  const note = (batch: number, change: RowChange | null) => {
    if (change !== null && batch <= asOf) changes.set(batch, [...(changes.get(batch) ?? []), change]);
  };
  for (const own of byRow(versions)) {
    for (const [i, version] of own.entries()) {
      const before = own[i - 1] ?? null;
      note(version.since, startOf(version, before, zeroOf, surgeon));
      if (version.until !== null && own[i + 1]?.since !== version.until) note(version.until, changeOf(version, "gone", [], zeroOf));
    }
  }
  return batches.flatMap(({ batch, kind, at, undoes }) => {
    const own = changes.get(batch) ?? [];
    const reason = beside.corrections.find(({ since }) => since === batch)?.reason ?? null;
    const joined = beside.joins.filter(({ since }) => since === batch).map((join) => join.case);
    return own.length + joined.length > 0 ? [{ batch, kind, at, undoes, reason, joined, changes: own }] : [];
  });
}

/** The versions of each row, oldest first. */
function byRow(versions: readonly RowVersion[]): readonly (readonly RowVersion[])[] {
  const rows = new Map<string, RowVersion[]>();
  for (const version of versions) {
    const name = `${version.table} ${version.entity}`;
    rows.set(name, [...(rows.get(name) ?? []), version]);
  }
  return [...rows.values()].map((own) => own.sort((a, b) => a.since - b.since));
}

function startOf(version: RowVersion, before: RowVersion | null, zeroOf: ZeroOf, surgeon: Codes): RowChange | null {
  if (before === null) return changeOf(version, "new", [], zeroOf);
  const fields = fieldChanges(version.table, before.row, version.row, zeroOf(version), surgeon);
  if (before.until !== version.since) return changeOf(version, "back", fields, zeroOf);
  return changeOf(version, "changed", fields, zeroOf);
}

function changeOf(version: RowVersion, what: RowChange["what"], fields: readonly FieldChange[], zeroOf: ZeroOf): RowChange {
  const { table, entity } = version;
  const row = version.row as Partial<Rows["visit"] & Rows["event"] & Rows["score"] & Rows["bodyMeasure"]>;
  const own = row.visitDay ?? row.onsetDay ?? row.scoreDay ?? row.bodyDay ?? null;
  const zero = zeroOf(version);
  return {
    table,
    entity,
    what,
    of: {
      bone: row.bone ?? null,
      side: row.side ?? null,
      day: own === null || zero === null ? null : own - zero,
      type: row.eventType ?? row.scoreCode ?? null,
    },
    fields,
  };
}

function fieldChanges(table: TableName, before: Row, after: Row, zero: number | null, surgeon: Codes): readonly FieldChange[] {
  return fieldsOf(table).flatMap(([id, field]) => {
    const [was, is] = [before[id] ?? null, after[id] ?? null];
    if (was === is) return [];
    const word = (value: Value) => (field.kind === "keyed" ? (value === null ? null : surgeon(String(value))) : shown(field, value, zero));
    return [{ field: id, label: field.label, kind: kindOf(field), unit: unitOf(field), before: word(was), after: word(is) }];
  });
}
