import type { Between, SeveralQuestion } from "@/lib/answers";
import { conditionField, valueOfText } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import { UsageError } from "../arguments";
import { cohortNamed } from "../cohort-words";

export type Sides = { readonly two: Between } | { readonly several: Several };
type Several = Pick<SeveralQuestion, "field" | "values" | "where">;
type Said = { readonly between: string | undefined; readonly cohorts: string | undefined; readonly cohort: string | undefined };

/** What `--between` or `--cohorts` holds beside each other: two groups, or several values of a field. @throws UsageError */
export async function sidesAsked(registry: Registry, { between, cohorts, cohort }: Said): Promise<Sides> {
  if ((between === undefined) === (cohorts === undefined))
    throw new UsageError("compare requires either --between FIELD=CODE,CODE or --cohorts");
  if (cohorts !== undefined) {
    const parts = splitCohorts(cohorts);
    if (parts.length !== 2) throw new UsageError("--cohorts requires two cohorts, each a saved name or JSON, with a comma between them");
    const [a, b] = await Promise.all(
      parts.map(async (part) => ({ name: part.startsWith("{") ? "a cohort" : part, where: await cohortNamed(registry, part) })),
    );
    return { two: { cohorts: [a, b] as [NonNullable<typeof a>, NonNullable<typeof b>] } };
  }
  const [field = "", codes = ""] = (between ?? "").split("=");
  const definition = conditionField(field);
  const values = codes.split(",").map((code) => valueOfText(field, code.trim()));
  const where = await cohortNamed(registry, cohort);
  const [a, b, ...more] = values;
  if (!definition || a === undefined || b === undefined) throw new UsageError("--between requires FIELD=CODE,CODE");
  return more.length > 0 ? { several: { field, values, where } } : { two: { field, values: [a, b], where } };
}

/** Commas inside JSON are not those between the two cohorts. */
function splitCohorts(text: string): string[] {
  let depth = 0;
  const parts = [""];
  for (const letter of text) {
    if (letter === "{" || letter === "[") depth++;
    if (letter === "}" || letter === "]") depth--;
    if (letter === "," && depth === 0) parts.push("");
    else parts[parts.length - 1] += letter;
  }
  return parts.map((part) => part.trim());
}
