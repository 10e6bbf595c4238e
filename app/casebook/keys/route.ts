import { casebookKeys, highestCase } from "@/lib/answers";
import { registry } from "../../_data/registry";
import { questionOf, readBookAsked } from "../_question";
import type { WhoseKeys } from "../_whose/talk";

export const dynamic = "force-dynamic";

/**
 * The pseudonym of each case with the sealed key, for the tab that is asked *Whose is this?*: who has the passphrase matches numbers there.
 * Nothing of a number comes here.
 */
export async function GET(request: Request): Promise<Response> {
  const open = await registry();
  const asked = Object.fromEntries(new URL(request.url).searchParams);
  const read = readBookAsked(asked, { newestBatch: (await open.state()).batch, highestCase: await highestCase(open) });
  if ("troubles" in read) return Response.json({ message: "The casebook can’t show what this address asks." }, { status: 400 });
  const [unitKey, { units }, found] = [await open.unitKey(), await open.settings(), await casebookKeys(open, questionOf(read.asked))];
  const keys: WhoseKeys = { unitKey, units, ...found };
  return Response.json(keys, { headers: { "Cache-Control": "no-store" } });
}
