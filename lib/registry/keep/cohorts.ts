import type { Connection } from "@/db/open";

export type SavedCohort = { readonly name: string; readonly where: string };

/** Saved cohorts by name, as canonical JSON. */
export function cohortsIn(db: Connection): readonly SavedCohort[] {
  return db.prepare('SELECT name, conditions AS "where" FROM cohort ORDER BY name').all() as SavedCohort[];
}

/**
 * Saves a cohort under a name, or gives the name to another cohort.
 * @throws RangeError for a name that isn't a word of small letters, digits and hyphens
 */
export function saveCohort(db: Connection, { name, where }: SavedCohort): void {
  if (!/^[0-9a-z-]{1,60}$/.test(name))
    throw new RangeError("saveCohort requires a name of small letters, digits and hyphens, received another");
  db.prepare("INSERT INTO cohort (name, conditions) VALUES (@name, @where) ON CONFLICT (name) DO UPDATE SET conditions = @where").run({
    name,
    where,
  });
}
