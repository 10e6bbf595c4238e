/** Keys of a cohort that hold cohorts. */
export const groupKeys: ReadonlySet<string> = new Set(["any", "all", "not"]);

/** One of a set (`null`: not recorded), a range with both ends in it, or whether anything was recorded. */
export type Condition =
  | readonly (string | number | boolean | null)[]
  | { readonly from?: number | undefined; readonly to?: number | undefined }
  | { readonly missing: boolean };

/**
 * A cohort as plain JSON: conditions on fields, all of which must hold; `any`: at least one of these; `all`: each of these; `not`: not this.
 * The same object stands in the URL, behind `--cohort` and under a saved name.
 */
export type Where = {
  readonly [field: string]: Condition | readonly Where[] | Where | undefined;
  readonly any?: readonly Where[] | undefined;
  readonly all?: readonly Where[] | undefined;
  readonly not?: Where | undefined;
};

export function isSet(part: Condition): part is readonly (string | number | boolean | null)[] {
  return Array.isArray(part);
}

/** Every field that a cohort names, however deep. */
export function fieldsNamed(where: Where): ReadonlySet<string> {
  const named = new Set<string>();
  for (const [key, part] of Object.entries(where)) {
    if (!groupKeys.has(key)) named.add(key);
    else for (const inner of [part].flat()) for (const field of fieldsNamed(inner as Where)) named.add(field);
  }
  return named;
}
