import { registry } from "../../_data/registry";
import type { Door } from "../_talk/door";

export const dynamic = "force-dynamic";

/** The sealed key and the unit's lists: what a tab needs before it can strip a file. */
export async function GET(): Promise<Response> {
  const open = await registry();
  const [unitKey, settings, { batch }] = await Promise.all([open.unitKey(), open.settings(), open.state()]);
  const { units, scores, auditYearStartsIn, yearOnly } = settings;
  const door: Door = { unitKey, units, scores: scores.map(({ code }) => code), auditYearStartsIn, yearOnly, batch };
  return Response.json(door);
}
