import { mappingToKeep, refusedCsv } from "@/lib/intake";
import type { Answer, Asked, FromWorker, Name, ToWorker } from "./_talk/messages";
import { StopCameTooLate } from "./_worker/ask-server";
import { commentShown } from "./_worker/comments";
import { commitRows } from "./_worker/commit";
import { openDoor } from "./_worker/door";
import { forgetFile, readFiles } from "./_worker/files";
import { findingsOfGroup } from "./_worker/findings";
import { makeKey, openKey, sealAnew } from "./_worker/key";
import { preparedOf, prepareFiles } from "./_worker/prepare";
import { newSession, type Work } from "./_worker/session";

declare const self: DedicatedWorkerGlobalScope;

const session = newSession();
const running = new Map<number, AbortController>();

/** How each question of the page is answered. Whatever identifies a person stays on this side, save what the page shows of it. */
const answers: { readonly [N in Name]: (asked: Asked<N>, work: Work) => Answer<N> | Promise<Answer<N>> } = {
  door: (_, { signal }) => openDoor(session, signal),
  read: ({ files }, work) => readFiles(session, files, work),
  forget: ({ file }) => forgetFile(session, file),
  makeKey: ({ passphrase }) => makeKey(session, passphrase),
  openKey: (asked, { signal }) => openKey(session, asked, signal),
  sealAnew: ({ passphrase }) => sealAnew(session, passphrase),
  prepare: (said, work) => prepareFiles(session, said, work),
  findings: ({ group, from, count }) => findingsOfGroup(session, preparedOf(session), group).slice(from, from + count),
  refused: ({ from, count }) => preparedOf(session).refused.slice(from, from + count),
  // the byte-order mark tells a spreadsheet that the text is UTF-8
  refusedCsv: () => new Blob(["\uFEFF", refusedCsv(preparedOf(session))], { type: "text/csv;charset=utf-8" }),
  mapping: () => mappingToKeep(preparedOf(session).mapping),
  comment: ({ index }) => commentShown(preparedOf(session), index),
  commit: (asked, work) => commitRows(session, asked, work),
};

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  if ("stop" in data) running.get(data.stop)?.abort();
  else void answer(data);
};

async function answer({ id, name, asked }: Extract<ToWorker, { id: number }>): Promise<void> {
  const control = new AbortController();
  running.set(id, control);
  const say = (message: FromWorker) => self.postMessage(message);
  try {
    const work: Work = { signal: control.signal, pace: (pace) => say({ id, pace }) };
    const respond = answers[name] as (asked: Asked<Name>, work: Work) => Promise<Answer<Name>>;
    say({ id, answer: await respond(asked, work) });
  } catch (error) {
    say(control.signal.aborted && !(error instanceof StopCameTooLate) ? { id, stopped: true } : { id, failed: failureOf(error) });
  } finally {
    running.delete(id);
  }
}

/** Our own errors quote no cell; the message of any other is left where it is. */
function failureOf(error: unknown): { name: string; message: string } {
  if (!(error instanceof Error)) return { name: "Error", message: "" };
  return { name: error.name, message: error.message };
}
