/** The pages that exist, in the order in which they stand in the line of names. */
export const pages = [
  { name: "Today", path: "/" },
  { name: "Intake", path: "/intake" },
  { name: "Casebook", path: "/casebook" },
  { name: "Cohorts", path: "/cohorts" },
  { name: "Outcomes", path: "/outcomes" },
] as const satisfies readonly { readonly name: string; readonly path: string }[];

/** The page's path if such a page exists: what has no page yet is named by its command instead. */
export function pathOf(name: string): string | null {
  return pages.find((page) => page.name === name)?.path ?? null;
}
