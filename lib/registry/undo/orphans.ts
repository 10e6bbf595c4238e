import { type Identity, identities, identityTable, open, versionTable } from "@/db/identities";
import type { Connection } from "@/db/open";
import { type TableName, tableNames } from "@/lib/codebook";
import { laterTouches, touchedBy } from "./put-back";

type Pair = { readonly child: TableName; readonly parent: "person" | "segment" };

const pairs: readonly Pair[] = tableNames.flatMap((child) => {
  const identity: Identity = identities[child];
  return identity.parents.map(({ table }) => ({ child, parent: table }));
});

/** Later batches of a row which holds under a parent that `@batch` brought: the parent would go and leave it. */
function laterChildren({ child, parent }: Pair): string {
  const [versions, parents] = [versionTable(child), versionTable(parent)];
  const going = `SELECT entity FROM ${parents} WHERE since_batch = @batch EXCEPT SELECT entity FROM ${parents} WHERE until_batch = @batch`;
  const staying = `SELECT i.entity FROM ${identityTable(child)} i JOIN ${versions} v ON v.entity = i.entity AND v.until_batch = ${open}
    WHERE i.${parent}_entity IN (${going}) AND i.entity NOT IN (${touchedBy(versions)})`;
  return laterTouches(versions, staying);
}

/** Later batches of a parent which holds no more, of a row that `@batch` took away: the row would come back without it. */
function lostParents({ child, parent }: Pair): string {
  const parents = versionTable(parent);
  const coming = `SELECT i.${parent}_entity FROM ${identityTable(child)} i JOIN ${versionTable(child)} v ON v.entity = i.entity
    WHERE v.until_batch = @batch`;
  const lost = `${coming} EXCEPT SELECT entity FROM ${parents} WHERE until_batch IN (@batch, ${open})`;
  return laterTouches(parents, lost);
}

const sql = pairs.flatMap((pair) => [laterChildren(pair), lostParents(pair)]).join("\nUNION ");

/** Batches after `batch` because of which undoing it would leave a row without its parent. */
export function orphaningBatches(db: Connection, batch: number): readonly number[] {
  return db.prepare(sql).pluck().all({ batch }).map(Number);
}
