import { countFindings, encodeCommit } from "@/lib/intake";
import type { Asked } from "../_talk/messages";
import type { Receipt } from "../_talk/receipt";
import { askServer } from "./ask-server";
import { correctedIn } from "./changes";
import { allFindings } from "./findings";
import { preparedOf } from "./prepare";
import type { Session, Work } from "./session";

const linesAChunk = 4000;

/** Sends the stripped rows: field ids, codes, numbers and counts, and nothing else. */
export async function commitRows(session: Session, { corrections }: Asked<"commit">, { signal, pace }: Work): Promise<Receipt> {
  const prepared = preparedOf(session);
  if (prepared.questions.length > 0) throw new RangeError("commitRows requires every question answered, received open ones");
  const overCorrections = corrections === "sheet" ? correctedIn(prepared).length : 0;
  const unitKey = session.key?.toKeep ?? null;
  const findings = countFindings(allFindings(session, prepared));
  const lines = encodeCommit({ rows: prepared.rows, findings, overCorrections, ...(unitKey ? { unitKey } : {}) });
  const body = await gathered(
    lines,
    Object.values(prepared.counts.made).reduce((sum, n) => sum + n, 2),
    { signal, pace },
  );
  // whatever comes of it, the registry may have moved on: what it holds and whether it has a key are asked anew
  session.held = null;
  session.beside = null;
  session.door = null;
  const response = await askServer("/intake/commit", { method: "POST", body, signal });
  const receipt = (await response.json()) as Receipt;
  if (session.key) session.key = { ...session.key, toKeep: null };
  return receipt;
}

/** A body by chunks, so that a stop is heard while it grows. */
async function gathered(lines: Iterable<string>, of: number, { signal, pace }: Work): Promise<Blob> {
  const parts: string[] = [];
  let done = 0;
  let chunk = "";
  for (const line of lines) {
    chunk += line;
    if (++done % linesAChunk !== 0) continue;
    parts.push(chunk);
    chunk = "";
    pace({ step: "send", done, of });
    await new Promise((resolve) => setTimeout(resolve, 0));
    signal.throwIfAborted();
  }
  pace({ step: "send", done: of, of });
  return new Blob([...parts, chunk], { type: "application/x-ndjson" });
}
