import { countFindings, encodeCommit } from "@/lib/intake";
import { commitHeader, type PaceOfCommit, type StoppedCommit } from "../_talk/commit";
import type { Asked } from "../_talk/messages";
import type { Receipt } from "../_talk/receipt";
import { askServer, StopCameTooLate } from "./ask-server";
import { correctedIn } from "./changes";
import { allFindings } from "./findings";
import { preparedOf } from "./prepare";
import { random, type Session, type Work } from "./session";

const linesAChunk = 4000;
const askEveryMs = 250;

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
  const receipt = await sent(body, { signal, pace });
  if (session.key) session.key = { ...session.key, toKeep: null };
  return receipt;
}

/** Sends the rows, asking now and then how far the server is with them; told to stop, it has the server stop and hears what came of it. */
async function sent(body: Blob, { signal, pace }: Work): Promise<Receipt> {
  const address = `/intake/commit/${nameOfCommit()}`;
  const connection = new AbortController();
  const headers = { [commitHeader]: address.slice(address.lastIndexOf("/") + 1) };
  const reply = askServer("/intake/commit", { method: "POST", body, headers, signal: connection.signal });
  const over = new AbortController();
  const told = new Promise<never>((_, reject) => {
    signal.addEventListener("abort", () => stopped(address).then(reject, reject), { once: true, signal: over.signal });
  });
  void askPaces(address, pace, over.signal);
  try {
    signal.throwIfAborted();
    // a reply that breaks off after the word to stop is that word's doing
    const response = await Promise.race([reply.catch((error: unknown) => (signal.aborted ? told : Promise.reject(error))), told]);
    return (await response.json()) as Receipt;
  } finally {
    over.abort();
    connection.abort();
    // nobody waits for it any more
    reply.catch(() => undefined);
  }
}

/** @returns why the commit gives no receipt: it was stopped, or had been written when the word came */
async function stopped(address: string): Promise<Error> {
  const response = await askServer(address, { method: "DELETE" });
  const { batch } = (await response.json()) as StoppedCommit;
  return batch === null ? new DOMException("the commit was stopped", "AbortError") : new StopCameTooLate(batch);
}

/** One question at a time: a browser has few connections, and the word to stop must find one free. */
async function askPaces(address: string, pace: Work["pace"], over: AbortSignal): Promise<void> {
  while (!over.aborted) {
    await new Promise((resolve) => setTimeout(resolve, askEveryMs));
    // how far it is matters less than that it goes on
    const response = await fetch(address, { signal: over }).catch(() => null);
    const now = response?.ok ? ((await response.json().catch(() => null)) as PaceOfCommit | null) : null;
    if (now !== null && !over.aborted) pace(now);
  }
}

/** Letters by chance that make no word. */
function nameOfCommit(): string {
  return Array.from(random(16), (byte) => "bcdfghjklmnpqrst"[byte % 16]).join("");
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
