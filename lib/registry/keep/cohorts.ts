import type { Connection } from "@/db/open";
import { detectInFileName } from "@/lib/intake";

export type SavedCohort = { readonly name: string; readonly where: string };

/** Saved cohorts by name, as canonical JSON. */
export function cohortsIn(db: Connection): readonly SavedCohort[] {
  return db.prepare('SELECT name, conditions AS "where" FROM cohort ORDER BY name').all() as SavedCohort[];
}

/** A name stands in addresses and captions: a title before a name, a person's number, or as many digits as a local number has are none. */
function namesPerson(name: string): boolean {
  return /\d{5}/.test(name) || detectInFileName(name.replaceAll("-", " ")).length > 0;
}

/**
 * Saves a cohort under a name, or gives the name to another cohort.
 * @throws RangeError for a name that isn't a word of small letters, digits and hyphens, or looks like a person's
 */
export function saveCohort(db: Connection, { name, where }: SavedCohort): void {
  if (!/^[0-9a-z-]{1,60}$/.test(name))
    throw new RangeError("saveCohort requires a name of small letters, digits and hyphens, received another");
  if (namesPerson(name)) throw new RangeError("saveCohort requires a name that is no person's and no long number, received another");
  db.prepare("INSERT INTO cohort (name, conditions) VALUES (@name, @where) ON CONFLICT (name) DO UPDATE SET conditions = @where").run({
    name,
    where,
  });
}
