import { createServer, request } from "node:http";
import type { CaughtRequest } from "../../integration/identifier-hunt";
import { freePort } from "./own-registry";

export type Recorder = { readonly address: string; readonly caught: CaughtRequest[]; readonly stop: () => Promise<void> };

/**
 * Stands between browser and server and keeps every byte that goes up, whoever in the browser sends it: page, worker, beacon or form.
 * Host and Origin are rewritten, since the server answers to its own address only.
 */
export async function recorderBefore(address: string): Promise<Recorder> {
  const server = new URL(address);
  const port = await freePort();
  const own = `http://127.0.0.1:${port}`;
  const caught: CaughtRequest[] = [];
  const between = createServer((incoming, outgoing) => {
    const chunks: Buffer[] = [];
    incoming.on("data", (chunk: Buffer) => chunks.push(chunk));
    incoming.on("end", () => {
      const body = Buffer.concat(chunks);
      const headers = incoming.headers as Record<string, string>;
      caught.push({ url: incoming.url ?? "", method: incoming.method ?? "", headers, body });
      const passed = { ...headers, host: server.host, ...(headers.origin ? { origin: headers.origin.replace(own, server.origin) } : {}) };
      const further = request(
        { hostname: server.hostname, port: server.port, path: incoming.url, method: incoming.method, headers: passed },
        (reply) => {
          outgoing.writeHead(reply.statusCode ?? 500, reply.headers);
          reply.pipe(outgoing);
        },
      );
      further.on("error", () => outgoing.destroy());
      further.end(body);
    });
  });
  await new Promise<void>((resolve) => between.listen(port, "127.0.0.1", resolve));
  const stop = () =>
    new Promise<void>((resolve) => {
      between.closeAllConnections();
      between.close(() => resolve());
    });
  return { address: own, caught, stop };
}
