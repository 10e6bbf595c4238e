import { spawn } from "node:child_process";
import { mkdirSync } from "node:fs";
import { createServer } from "node:net";
import path from "node:path";
import { environment, root } from "./run.mjs";

const host = "127.0.0.1";
const usualPort = 4270;

function portIsFree(port) {
  return new Promise((resolve) => {
    const probe = createServer();
    probe.once("error", () => resolve(false));
    probe.listen(port, host, () => probe.close(() => resolve(true)));
  });
}

function anyFreePort() {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", reject);
    probe.listen(0, host, () => {
      const { port } = probe.address();
      probe.close(() => resolve(port));
    });
  });
}

export async function freePort() {
  const wanted = Number(process.env.PORT ?? usualPort);
  return (await portIsFree(wanted)) ? wanted : anyFreePort();
}

/**
 * Start the pages on 127.0.0.1 and wait until they answer.
 * @returns { child, address, ended } where `ended` resolves with the exit code
 */
export async function startServer({ data, port }) {
  const folder = path.resolve(root, data);
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  // an answer makes many short-lived rows: with room for them the collector need not copy those still in use again and again
  const nodeOptions = ["--max-semi-space-size=64"];
  const child = spawn(process.execPath, [...nodeOptions, "node_modules/next/dist/bin/next", "start", "-H", host, "-p", String(port)], {
    cwd: root,
    env: { ...environment, NODE_ENV: "production", LENGTHBOOK_DATA: folder, LENGTHBOOK_PORT: String(port) },
    stdio: ["ignore", "pipe", "pipe"],
  });
  let output = "";
  const keep = (chunk) => {
    output = (output + chunk).slice(-8000);
  };
  child.stdout.on("data", keep);
  child.stderr.on("data", keep);
  const ended = new Promise((resolve) => child.once("exit", (code, signal) => resolve(code ?? (signal ? 0 : 1))));
  const address = `http://${host}:${port}`;
  // the child's own life is watched too: an older server on the port must not answer for it
  while (child.exitCode === null) {
    const answered = await fetch(`${address}/`).then(
      (response) => response.status < 500,
      () => false,
    );
    if (answered) return { child, address, ended, output: () => output };
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(`The server ended before it answered:\n${output}`);
}

/** Serve until told to stop; resolves with the exit code. */
export async function serve({ name, data }) {
  const { child, address, ended } = await startServer({ data, port: await freePort() });
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => child.kill("SIGTERM"));
  // what goes wrong later is said in this window: the pages send their reader here
  child.stderr.on("data", (chunk) => process.stderr.write(chunk));
  console.log(`${name}: ${address}\nStop it with Ctrl+C.`);
  await ended;
  return 0;
}
