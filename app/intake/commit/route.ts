import { registry } from "../../_data/registry";
import { guarded, refusalOf } from "../../_page/door";
import { bytesOf } from "../_server/bytes-of";
import { receiptOf } from "../_server/receipt-of";
import { refused, refusedBecause } from "../_server/refusals";

export const dynamic = "force-dynamic";

/**
 * Takes stripped rows, each line checked on arrival, and commits them as one batch. Nothing is written before the last line has come.
 * This address is not in the keeping of the door before all others, which would hold the whole body twice: the same checks stand here.
 */
export async function POST(request: Request): Promise<Response> {
  return guarded(await committed(request));
}

async function committed(request: Request): Promise<Response> {
  const foreign = refusalOf(request);
  if (foreign !== null) return refused(403, "not-from-here", foreign);
  if (request.headers.get("content-type") !== "application/x-ndjson")
    return refused(415, "not-rows", "Rows come as application/x-ndjson, one a line.");
  try {
    const open = await registry();
    const at = new Date().toISOString().replace(/\.\d+Z$/, "Z");
    // a person who stops, or closes the tab, stops the commit
    const committed = await open.commitLines(bytesOf(request), { at, signal: request.signal });
    return Response.json(receiptOf(committed, await open.waiting()));
  } catch (error) {
    // nobody is there any more to be told
    if (request.signal.aborted) return refused(503, "stopped", "The commit was stopped. Nothing was kept.");
    return refusedBecause(error);
  }
}
