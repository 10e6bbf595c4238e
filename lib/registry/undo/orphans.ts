import { type Identity, identities, identityTable, open, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { type TableName, tableNames } from "@/lib/codebook";

type Pair = { readonly child: TableName; readonly parent: "person" | "segment" };

const pairs: readonly Pair[] = tableNames.flatMap((child) => {
  const identity: Identity = identities[child];
  return identity.parents.map(({ table }) => ({ child, parent: table }));
});

/** Batches after `@batch` that touched a row which holds now under a parent that `@batch` brought: the parent would go and leave it. */
function laterChildren({ child, parent }: Pair): string {
  const [versions, parents] = [versionTable(child), versionTable(parent)];
  const going = `SELECT entity FROM ${parents} WHERE since_batch = @batch EXCEPT SELECT entity FROM ${parents} WHERE until_batch = @batch`;
  const staying = `SELECT i.entity FROM ${identityTable(child)} i JOIN ${versions} v ON v.entity = i.entity
    WHERE v.until_batch = ${open} AND v.since_batch > @batch AND i.${parent}_entity IN (${going})`;
  return `SELECT since_batch AS batch FROM ${versions} WHERE since_batch > @batch AND entity IN (${staying})
    UNION SELECT until_batch FROM ${versions} WHERE until_batch > @batch AND until_batch < ${open} AND entity IN (${staying})`;
}

/** Batches after `@batch` that took away the parent of a row which `@batch` took away: the row would come back without it. */
function lostParents({ child, parent }: Pair): string {
  const coming = `SELECT i.${parent}_entity FROM ${identityTable(child)} i JOIN ${versionTable(child)} v ON v.entity = i.entity
    WHERE v.until_batch = @batch`;
  return `SELECT max(until_batch) AS batch FROM ${versionTable(parent)} WHERE entity IN (${coming})
    GROUP BY entity HAVING max(until_batch) > @batch AND max(until_batch) < ${open}`;
}

const sql = pairs.flatMap((pair) => [laterChildren(pair), lostParents(pair)]).join("\nUNION ");

/** Batches that stand in the way of undoing `batch` because a row would be left without its parent. */
export function orphaningBatches(db: Connection, batch: number): readonly number[] {
  return db.prepare(sql).pluck().all({ batch }).map(Number);
}
