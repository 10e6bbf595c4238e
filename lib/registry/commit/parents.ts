import type { Connection } from "@/db/open";
import type { TableName } from "@/lib/codebook";
import type { Cell, Cells, Layout } from "./cells";

type Parent = "person" | "segment";

/** Entities of persons and segments by natural key: those of this batch, and others as they are asked for. */
export type Parents = {
  readonly note: (table: TableName, key: string, entity: number) => void;
  /**
   * Entities of a row's parents in the order of its identity; `null` for an event of a person. A parent that nothing was said of yet is
   * identified by its natural key, without a version: its row may come later. "half-named": part of a segment's key is blank.
   */
  readonly of: (layout: Layout, cells: Cells) => readonly (number | null)[] | "half-named";
};

const findPerson = "SELECT entity FROM person_id WHERE person = ?";
const findSegment = "SELECT entity FROM segment_id WHERE person_entity = ? AND bone = ? AND side = ? AND surgery_day = ?";
const identifyPerson = "INSERT INTO person_id (person) VALUES (?)";
const identifySegment = "INSERT INTO segment_id (person_entity, bone, side, surgery_day) VALUES (?, ?, ?, ?)";

export function parentsIn(db: Connection): Parents {
  const known: Readonly<Record<Parent, Map<string, number>>> = { person: new Map(), segment: new Map() };
  const find = { person: db.prepare(findPerson).pluck(), segment: db.prepare(findSegment).pluck() };
  const identify = { person: db.prepare(identifyPerson), segment: db.prepare(identifySegment) };

  function entityOf(parent: Parent, text: string, key: readonly Cell[]): number {
    const before = known[parent].get(text);
    if (before !== undefined) return before;
    const found = find[parent].get(...key) as number | undefined;
    const entity = found ?? Number(identify[parent].run(...key).lastInsertRowid);
    known[parent].set(text, entity);
    return entity;
  }

  return {
    note: (table, key, entity) => {
      if (table === "person" || table === "segment") known[table].set(key, entity);
    },
    of: ({ table, key }, cells) => {
      if (table === "person") return [];
      const person = cells[key[0] ?? 0] ?? null;
      const personEntity = known.person.get(String(person)) ?? entityOf("person", String(person), [person]);
      if (table !== "visit" && table !== "event") return [personEntity];
      const segment = key.slice(1, 4).map((place) => cells[place] ?? null);
      if (table === "event" && segment.every((cell) => cell === null)) return [personEntity, null];
      if (segment.includes(null)) return "half-named";
      const segmentEntity = entityOf("segment", `${person}|${segment.join("|")}`, [personEntity, ...segment]);
      return table === "visit" ? [segmentEntity] : [personEntity, segmentEntity];
    },
  };
}
