import { snake, type TableName } from "@/lib/codebook";

/** How an identity is told: by its parents' identities and by key fields of its own. A parent may be blank where marked. */
export type Identity = {
  readonly parents: readonly { readonly table: "person" | "segment"; readonly blank: boolean }[];
  readonly own: readonly string[];
};

/** The natural key of the codebook, each parent replaced by its identity's number. An event of a person has no segment. */
export const identities = {
  person: { parents: [], own: ["person"] },
  bodyMeasure: { parents: [{ table: "person", blank: false }], own: ["bodyDay"] },
  segment: { parents: [{ table: "person", blank: false }], own: ["bone", "side", "surgeryDay"] },
  visit: { parents: [{ table: "segment", blank: false }], own: ["visitDay"] },
  event: {
    parents: [
      { table: "person", blank: false },
      { table: "segment", blank: true },
    ],
    own: ["eventType", "onsetDay", "eventNumber"],
  },
  score: { parents: [{ table: "person", blank: false }], own: ["scoreCode", "scoreDay"] },
} as const satisfies Record<TableName, Identity>;

/** Until when a version holds that still holds. No batch ever has this number. */
export const open = 2147483647;

/** SQL name of a table's versions. */
export function versionTable(table: TableName): string {
  return snake(table);
}

/** SQL name of a table's identities. */
export function identityTable(table: TableName): string {
  return `${snake(table)}_id`;
}
