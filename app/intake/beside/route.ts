import { registry } from "../../_data/registry";
import { besideOf } from "../_server/beside";

export const dynamic = "force-dynamic";

/** Numbers joined and fields corrected by hand, for the tab that compares a file with what is held. */
export async function GET(): Promise<Response> {
  return Response.json(await besideOf(await registry()));
}
