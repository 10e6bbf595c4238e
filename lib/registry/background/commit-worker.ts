import { type MessagePort, parentPort, workerData } from "node:worker_threads";
import { closeRegistryFile, openRegistryFile } from "@/db/open";
import { checkRows } from "@/lib/intake";
import { commitRows } from "../commit/commit";
import type { OnPace } from "../pace";
import { inTransaction } from "../transaction";
import type { CommitResult } from "../types";
import { failureOf } from "./failure";
import { lineTaker } from "./line-taker";
import type { Answer, FromWorker, Task, ToWorker } from "./talk";

// A thread for one large commit: it takes the lines, checks them and commits over a connection of its own, and then it ends, its memory with it.

const { folder, at } = workerData as Task;
const taker = lineTaker();

function committed(onPace: OnPace): CommitResult {
  const { rows, ...brought } = taker.finish();
  const db = openRegistryFile(folder);
  try {
    return inTransaction(db, () => commitRows(db, rows, { ...brought, at, onPace }, checkRows));
  } finally {
    closeRegistryFile(db);
  }
}

function answerTo(message: ToWorker, onPace: OnPace): Answer {
  try {
    if ("end" in message) return { done: committed(onPace) };
    taker.take(message.text);
    return { taken: true };
  } catch (error) {
    return { failed: failureOf(error) };
  }
}

function listen(port: MessagePort): void {
  const say = (message: FromWorker) => port.postMessage(message);
  port.on("message", (message: ToWorker) => {
    const answer = answerTo(message, (pace) => say({ pace }));
    say(answer);
    if (!("taken" in answer)) port.close();
  });
}

if (parentPort) listen(parentPort);
