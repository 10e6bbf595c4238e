import { correctCase, type TypedWrongly } from "@/lib/answers";
import { correctionReasons } from "@/lib/codebook";
import type { NothingCommitted, RowsRefused } from "@/lib/registry";
import { isNamed } from "../../_data/is-named";
import { now } from "../../_data/now";
import { registry } from "../../_data/registry";
import { readCorrect } from "../[case]/_correct";

/** Corrects one field of a case, then shows the case with what came of it. Codes and numbers come in, and no words of one's own. */
export async function POST(request: Request): Promise<Response> {
  const form = await request.formData();
  const text = (name: string) => {
    const value = form.get(name);
    return typeof value === "string" ? value : "";
  };
  const number = /^\d{1,9}$/.test(text("case")) ? text("case") : null;
  if (number === null) return seeOther("/casebook");
  const row = readCorrect(text("row"));
  const reason = correctionReasons.find((one) => one === text("reason"));
  if (row === null || row.field === null || !reason) return seeOther(`/casebook/${number}?trouble=unknown#correct`);
  const asked = { case: Number(number), table: row.table, entity: row.entity, field: row.field, typed: text("value"), reason, at: now() };
  return seeOther(`/casebook/${number}?${await outcomeOf(asked, text("row"))}`);
}

async function outcomeOf(asked: Parameters<typeof correctCase>[1], row: string): Promise<string> {
  const again = (code: string) => `correct=${row}&trouble=${code}#correct`;
  try {
    const { batch } = await correctCase(await registry(), asked);
    return batch === null ? again("same") : `corrected=${batch}`;
  } catch (error) {
    if (isNamed<TypedWrongly>(error, "TypedWrongly")) return again("typed");
    if (isNamed<RowsRefused>(error, "RowsRefused")) return again(error.findings[0]?.code ?? "unknown");
    if (isNamed<NothingCommitted>(error, "NothingCommitted")) return again("failed");
    if (isNamed<RangeError>(error, "RangeError")) return "trouble=unknown#correct";
    throw error;
  }
}

function seeOther(address: string): Response {
  return new Response(null, { status: 303, headers: { Location: address } });
}
