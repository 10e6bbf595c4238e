import { open } from "@/db/identities";
import type { Connection } from "@/db/open";
import type { TableName } from "@/lib/codebook";
import type { Cell, Cells, Layout } from "./cells";

type Parent = "person" | "segment";

/** Entities of persons and segments that hold now, by natural key: those of this batch, and others as they are asked for. */
export type Parents = {
  readonly note: (table: TableName, key: string, entity: number) => void;
  /** Entities of a row's parents in the order of its identity; `null` for an event of a person; undefined when one isn't held. */
  readonly of: (layout: Layout, cells: Cells) => readonly (number | null)[] | { readonly missing: Parent };
};

const findPerson = `SELECT i.entity FROM person_id i JOIN person v ON v.entity = i.entity AND v.until_batch = ${open} WHERE i.person = ?`;
const findSegment = `SELECT i.entity FROM segment_id i JOIN segment v ON v.entity = i.entity AND v.until_batch = ${open}
  JOIN person_id p ON p.entity = i.person_entity WHERE p.person = ? AND i.bone = ? AND i.side = ? AND i.surgery_day = ?`;

export function parentsIn(db: Connection): Parents {
  const known: Readonly<Record<Parent, Map<string, number>>> = { person: new Map(), segment: new Map() };
  const find = { person: db.prepare(findPerson).pluck(), segment: db.prepare(findSegment).pluck() };

  function entityOf(parent: Parent, key: readonly Cell[]): number | undefined {
    const text = `|${key.join("|")}`;
    const before = known[parent].get(text);
    if (before !== undefined) return before;
    const entity: unknown = find[parent].get(...key);
    if (typeof entity !== "number") return undefined;
    known[parent].set(text, entity);
    return entity;
  }

  return {
    note: (table, key, entity) => {
      if (table === "person" || table === "segment") known[table].set(key, entity);
    },
    of: ({ table, key }, cells) => {
      if (table === "person") return [];
      const [person = null, bone = null, side = null, surgeryDay = null] = key.map((place) => cells[place] ?? null);
      const personEntity = entityOf("person", [person]);
      if (personEntity === undefined) return { missing: "person" };
      const blank = bone === null && side === null && surgeryDay === null;
      if (table === "event" && blank) return [personEntity, null];
      if (table !== "visit" && table !== "event") return [personEntity];
      const segmentEntity = entityOf("segment", [person, bone, side, surgeryDay]);
      if (segmentEntity === undefined) return { missing: "segment" };
      return table === "visit" ? [segmentEntity] : [personEntity, segmentEntity];
    },
  };
}
