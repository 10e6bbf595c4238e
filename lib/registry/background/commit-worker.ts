import { type MessagePort, parentPort, workerData } from "node:worker_threads";
import { closeRegistryFile, openRegistryFile } from "@/db/open";
import { checkRows } from "@/lib/intake";
import { commitRows } from "../commit/commit";
import { inTransaction } from "../transaction";
import type { CommitResult } from "../types";
import { failureOf } from "./failure";
import { lineTaker } from "./line-taker";
import type { FromWorker, Task, ToWorker } from "./talk";

// A thread for one large commit: it takes the lines, checks them and commits over a connection of its own, and then it ends, its memory with it.

const { folder, at } = workerData as Task;
const taker = lineTaker();

function committed(): CommitResult {
  const { rows, ...brought } = taker.finish();
  const db = openRegistryFile(folder);
  try {
    return inTransaction(db, () => commitRows(db, rows, { ...brought, at }, checkRows));
  } finally {
    closeRegistryFile(db);
  }
}

function answerTo(message: ToWorker): FromWorker {
  try {
    if ("end" in message) return { done: committed() };
    taker.take(message.text);
    return { taken: true };
  } catch (error) {
    return { failed: failureOf(error) };
  }
}

function listen(port: MessagePort): void {
  port.on("message", (message: ToWorker) => {
    const answer = answerTo(message);
    port.postMessage(answer);
    if (!("taken" in answer)) port.close();
  });
}

if (parentPort) listen(parentPort);
