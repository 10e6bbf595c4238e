import { registry } from "../../_data/registry";
import { guarded, refusalOf } from "../../_page/door";
import { bytesOf } from "../_server/bytes-of";
import { commitAs } from "../_server/commits";
import { receiptOf } from "../_server/receipt-of";
import { refused, refusedBecause } from "../_server/refusals";
import { commitHeader, commitName } from "../_talk/commit";

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
  // a person who closes the tab stops the commit too
  let stop = request.signal;
  try {
    const open = await registry();
    const at = new Date().toISOString().replace(/\.\d+Z$/, "Z");
    const committed = await commitAs(nameOf(request), ({ signal, onPace }) => {
      stop = AbortSignal.any([request.signal, signal]);
      const bytes = bytesOf(request, (done, of) => onPace({ step: "take", done, of }));
      return open.commitLines(bytes, { at, onPace, signal: stop });
    });
    return Response.json(receiptOf(committed, await open.waiting()));
  } catch (error) {
    if (stop.aborted) return refused(503, "stopped", "The commit was stopped. Nothing was kept.");
    return refusedBecause(error);
  }
}

/** The name that the tab gave, or one that nobody else knows. */
function nameOf({ headers }: Request): string {
  const name = headers.get(commitHeader);
  return name !== null && commitName.test(name) ? name : crypto.randomUUID();
}
