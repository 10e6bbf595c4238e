import * as z from "zod";
import { firstOf } from "@/lib/answers";
import type { NothingCommitted, NotOnePatient } from "@/lib/registry";
import { isNamed } from "../../_data/is-named";
import { now } from "../../_data/now";
import { registry } from "../../_data/registry";

const entity = z.int().min(1).max(999_999_999);
/** Two persons by number, and the difference of their lines, which the tab worked out: nothing else may come. */
const asked = z.strictObject({ person: entity, into: entity, days: z.int().min(-36_524).max(36_524) });

export async function POST(request: Request): Promise<Response> {
  const read = asked.safeParse(await request.json().catch(() => null));
  if (!read.success) return refused(400, "Two cases and a number of days were expected, and something else came. Nothing was joined.");
  const open = await registry();
  try {
    const { batch } = await open.join({ ...read.data, at: now() });
    return Response.json({ batch, case: firstOf(await open.joins(), read.data.person) });
  } catch (error) {
    if (isNamed<NotOnePatient>(error, "NotOnePatient")) return refused(409, differing[error.field]);
    if (isNamed<NothingCommitted>(error, "NothingCommitted"))
      return refused(503, "The registry’s file could not be written. Nothing was joined.");
    if (isNamed<RangeError>(error, "RangeError"))
      return refused(409, "These two can’t be joined: one is not held any more, or they are one already. Nothing was joined.");
    throw error;
  }
}

const differing: Readonly<Record<NotOnePatient["field"], string>> = {
  sex: "The two are recorded with different sexes. Correct the one that is wrong, then join them. Nothing was joined.",
  line: "One of the two came with dates and the other without: their days can’t lie on one line. Nothing was joined.",
};

function refused(status: number, message: string): Response {
  return Response.json({ message }, { status });
}
