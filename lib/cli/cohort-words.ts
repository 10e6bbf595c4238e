import { ownIndexId } from "@/lib/codebook";
import { CohortError, conditionField, conditionFieldIds, fieldsNamed, parseSplitField, parseWhere, type Where } from "@/lib/cohorts";
import type { Registry } from "@/lib/registry";
import { UsageError } from "./arguments";

/** The fields of `--by` or `--adjust`. @throws UsageError */
export function fieldsOfSplit(text: string | undefined, option = "by"): string[] {
  const fields = text === undefined || text === "" ? [] : text.split(",").map((field) => field.trim());
  if (!fields.every(isSplitField)) throw new UsageError(`--${option} requires fields among ${conditionFieldIds().join(", ")}`);
  return fields;
}

function isSplitField(text: string): boolean {
  try {
    return conditionField(parseSplitField(text).id) !== undefined;
  } catch {
    return false;
  }
}

/** The cohort of `--cohort`: JSON, or the name of a saved one; all segments when nothing is said. @throws UsageError */
export async function cohortNamed(registry: Registry, text: string | undefined): Promise<Where> {
  if (text === undefined || text === "") return {};
  const json = text.trimStart().startsWith("{") ? text : (await registry.cohorts()).find(({ name }) => name === text)?.where;
  if (json === undefined) throw new UsageError("--cohort requires JSON, or the name of a saved cohort (cohort list)");
  const where = readWhere(json);
  const { indices } = await registry.settings();
  const unknown = [...fieldsNamed(where)].some((id) => ownIndexId.test(id) && !indices.some((index) => index.id === id));
  if (unknown) throw new UsageError("--cohort requires indices that stand in the unit's settings");
  return where;
}

function readWhere(json: string): Where {
  try {
    return parseWhere(json);
  } catch (error) {
    if (error instanceof CohortError) throw new UsageError(error.message);
    throw error;
  }
}
