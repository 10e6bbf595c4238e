import { CohortError, canonicalWhere, parseWhere } from "@/lib/cohorts";
import { isNamed } from "../../_data/is-named";
import { registry } from "../../_data/registry";
import { addressOf } from "../_address";
import { nameFrom } from "../_name";

/** Saves a cohort under a name, then shows it. A name that is another cohort's is given away only when that was said. */
export async function POST(request: Request): Promise<Response> {
  const form = await request.formData();
  return new Response(null, {
    status: 303,
    headers: { Location: await saved(textIn(form, "name"), textIn(form, "where"), form.get("replace") === "yes") },
  });
}

async function saved(typed: string, text: string, replace: boolean): Promise<string> {
  const where = readable(text);
  if (where === null) return "/cohorts?where=unreadable";
  const name = nameFrom(typed);
  const unnamed = addressOf("/cohorts", { where, more: { unnamed: "yes" } });
  if (name === null) return unnamed;
  const open = await registry();
  const held = (await open.cohorts()).find((one) => one.name === name);
  if (held && held.where !== canonicalWhere(where) && !replace) return addressOf("/cohorts", { where, more: { taken: name } });
  try {
    await open.saveCohort({ name, where: canonicalWhere(where) });
  } catch (error) {
    if (isNamed<RangeError>(error, "RangeError")) return unnamed;
    throw error;
  }
  return addressOf("/cohorts", { where, more: { saved: name } });
}

function readable(text: string) {
  try {
    return parseWhere(text);
  } catch (error) {
    if (error instanceof CohortError) return null;
    throw error;
  }
}

function textIn(form: FormData, name: string): string {
  const value = form.get(name);
  return typeof value === "string" ? value : "";
}
