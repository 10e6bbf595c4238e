import { registry } from "../../_data/registry";
import { heldLines } from "../_server/held-lines";

export const dynamic = "force-dynamic";

/** What is held, stripped rows all, a line a row: so that the tab can tell new from known before anything goes up. */
export async function GET(): Promise<Response> {
  const open = await registry();
  return new Response(heldLines(open.held()), { headers: { "Content-Type": "application/x-ndjson" } });
}
