import { NothingCommitted } from "@/lib/registry";
import { now } from "../../_data/now";
import { registry } from "../../_data/registry";

/** Takes a batch back, then shows Today with what came of it. The door before it has checked that one of our own pages asks. */
export async function POST(request: Request): Promise<Response> {
  const asked = (await request.formData()).get("batch");
  const batch = typeof asked === "string" && /^[1-9]\d{0,8}$/.test(asked) ? Number(asked) : null;
  return new Response(null, { status: 303, headers: { Location: batch === null ? "/?undo=unknown" : await undone(batch) } });
}

async function undone(batch: number): Promise<string> {
  const open = await registry();
  if (!(await open.batches()).some((held) => held.batch === batch)) return "/?undo=unknown";
  try {
    const result = await open.undo(batch, { at: now() });
    return "blockedBy" in result ? `/?undo=${batch}&blockedBy=${result.blockedBy.join(",")}` : `/?undo=${batch}&batch=${result.batch}`;
  } catch (error) {
    if (error instanceof NothingCommitted) return `/?undo=${batch}&failed=1`;
    throw error;
  }
}
