import { canonicalWhere, type Where } from "@/lib/cohorts";

/** The address of a page that is asked of a cohort. */
export function addressOf(
  path: string,
  {
    where,
    by = [],
    more = {},
  }: { readonly where: Where; readonly by?: readonly string[]; readonly more?: Readonly<Record<string, string>> },
): string {
  const asked = new URLSearchParams();
  if (Object.keys(where).length > 0) asked.set("where", canonicalWhere(where));
  if (by.length > 0) asked.set("by", by.join(","));
  for (const [name, value] of Object.entries(more)) asked.set(name, value);
  const text = asked.toString();
  return text === "" ? path : `${path}?${text}`;
}
