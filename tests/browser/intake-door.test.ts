import { request } from "node:http";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { makeUnitKey, sealUnitKey } from "@/lib/intake";
import { inRegistry } from "../integration/in-registry";
import { type OwnRegistry, ownRegistry } from "./intake/own-registry";

let registry: OwnRegistry;
beforeAll(async () => {
  registry = await ownRegistry();
});
afterAll(() => registry.stop());

type Sent = { readonly headers?: Record<string, string>; readonly body: string | Buffer; readonly breakOff?: boolean };
type Reply = { readonly status: number; readonly body: string; readonly headers: Record<string, string | string[] | undefined> };

/** A commit as anything at all could send it. */
function send({ headers = {}, body, breakOff = false }: Sent): Promise<Reply | "broken off"> {
  const { hostname, port, host } = new URL(registry.address);
  const usual = {
    host,
    origin: registry.address,
    "content-type": "application/x-ndjson",
    "content-length": String(Buffer.byteLength(body)),
  };
  return new Promise((resolve) => {
    const outgoing = request({ hostname, port, path: "/intake/commit", method: "POST", headers: { ...usual, ...headers } }, (reply) => {
      const chunks: Buffer[] = [];
      reply.on("data", (chunk: Buffer) => chunks.push(chunk));
      reply.on("end", () => resolve({ status: reply.statusCode ?? 0, body: Buffer.concat(chunks).toString(), headers: reply.headers }));
    });
    outgoing.on("error", () => resolve("broken off"));
    if (!breakOff) {
      outgoing.end(body);
      return;
    }
    outgoing.write(body);
    setTimeout(() => outgoing.destroy(), 300);
  });
}

const person = "0123456789ABCDEFGHJKMNPQRS";
const line = (value: unknown) => `${JSON.stringify(value)}\n`;
const personRow = { person, unit: "unit-1", line: "dated" };
const commitOf = (rows: readonly { table: string; row: unknown }[], head: object = {}) => {
  const counts: Record<string, number> = {};
  for (const { table } of rows) counts[table] = (counts[table] ?? 0) + 1;
  return [line({ lengthbook: 1, counts, findings: {}, ...head }), ...rows.map(line), line({ end: rows.length })].join("");
};
const good = commitOf([{ table: "person", row: personRow }]);

async function isEmpty(): Promise<boolean> {
  return inRegistry(registry.data, async (open) => (await open.batches()).length === 0 && (await open.unitKey()) === null);
}

describe("a commit from elsewhere is refused, with the guards of every reply", () => {
  test.each([
    ["another host", { host: "evil.example" }],
    ["another origin", { origin: "http://evil.example" }],
    ["another site by the browser's word", { "sec-fetch-site": "cross-site", "sec-fetch-mode": "cors" }],
  ])("%s", async (_, headers) => {
    const reply = await send({ headers, body: good });
    if (reply === "broken off") throw new Error("the server hung up");
    expect(reply.status).toBe(403);
    expect(reply.headers).toMatchObject({ "x-content-type-options": "nosniff", "cross-origin-resource-policy": "same-origin" });
    expect(await isEmpty()).toBe(true);
  });
});

describe("what isn't stripped rows is refused by name of the fault, never of the value, and nothing is kept", () => {
  const name = "Quornaruthe";
  test.each([
    ["text for a code", commitOf([{ table: "person", row: { ...personRow, sex: name } }]), 422, "(line 2, sex)"],
    [
      "a field that isn't the codebook's",
      commitOf([{ table: "person", row: { ...personRow, surname: name } }]),
      422,
      "a field that the codebook hasn't (line 2)",
    ],
    ["a local number for a pseudonym", commitOf([{ table: "person", row: { ...personRow, person: "0187740" } }]), 422, "(line 2, person)"],
    [
      "a date for a day",
      commitOf([{ table: "person", row: { ...personRow, followUpStatusDay: "2023-01-04" } }]),
      422,
      "(line 2, followUpStatusDay)",
    ],
    ["a text beside the head", commitOf([], { file: name }), 422, "(line 1)"],
    ["a line that is no JSON", `${good}${name}\n`, 422, "(line 4)"],
    ["fewer rows than the head says", good.replace('"person":1', '"person":2'), 422, "counts"],
    ["no end", good.slice(0, good.lastIndexOf("{")), 422, "a commit without its end"],
    ["nothing", "", 422, "a commit without its end"],
  ])("%s", async (_, body, status, says) => {
    const reply = await send({ body });
    if (reply === "broken off") throw new Error("the server hung up");
    expect(reply.status).toBe(status);
    const { error, message } = JSON.parse(reply.body);
    expect(error).toBe("not-stripped");
    expect(message).toContain(says);
    expect(message).toContain("Nothing was kept.");
    expect(reply.body).not.toContain(name);
    expect(await isEmpty()).toBe(true);
  });

  test("bytes that are no UTF-8", async () => {
    const reply = await send({
      body: Buffer.concat([Buffer.from(good.slice(0, 40)), Buffer.from([0xff, 0xfe, 0xc3]), Buffer.from(good.slice(40))]),
    });
    expect(reply).toMatchObject({ status: 400 });
    expect(await isEmpty()).toBe(true);
  });

  test.each(["text/plain", "application/json", "application/x-ndjson; charset=utf-8", "multipart/form-data"])("as %s", async (type) => {
    expect(await send({ headers: { "content-type": type }, body: good })).toMatchObject({ status: 415 });
    expect(await isEmpty()).toBe(true);
  });
});

test("a body that breaks off leaves nothing", async () => {
  const reply = await send({ headers: { "content-length": String(good.length + 100) }, body: good, breakOff: true });
  expect(reply).toBe("broken off");
  await new Promise((resolve) => setTimeout(resolve, 300));
  expect(await isEmpty()).toBe(true);
});

test("more than 256 MB is refused by its length, said or not", async () => {
  const most = 256 * 1024 * 1024;
  const filler = Buffer.alloc(most + 1, 10);
  const tooLarge = (reply: Reply | "broken off") => reply === "broken off" || reply.status === 413;
  expect(await send({ body: filler })).toSatisfy(tooLarge);
  expect(await send({ headers: { "content-length": String(most + 1) }, body: filler.subarray(0, 10), breakOff: true })).toSatisfy(tooLarge);
  expect(await isEmpty()).toBe(true);
});

test("every byte of a body above 10 MB arrives: its last line is the one refused", async () => {
  const rows = Array.from({ length: 60_000 }, () => ({
    table: "person",
    row: { ...personRow, sex: "female", indication: "limb-length-discrepancy", aetiology: "post-traumatic" },
  }));
  const body = commitOf([...rows, { table: "person", row: { ...personRow, sex: "?" } }]);
  expect(body.length).toBeGreaterThan(10 * 1024 * 1024);
  const reply = await send({ body });
  if (reply === "broken off") throw new Error("the server hung up");
  expect(JSON.parse(reply.body).message).toContain("(line 60002, sex)");
  expect(await isEmpty()).toBe(true);
});

describe("a commit that its tab named", () => {
  const ask = (name: string, method: string, headers: Record<string, string> = { origin: registry.address }) =>
    fetch(`${registry.address}/intake/commit/${name}`, { method, headers });

  test("a stop that comes before it holds, and nothing is kept", async () => {
    const name = "bcdfghjklmnpqrst";
    expect(await (await ask(name, "GET")).json()).toBeNull();
    expect(await (await ask(name, "DELETE")).json()).toEqual({ batch: null });
    expect(await send({ headers: { "x-commit": name }, body: good })).toMatchObject({ status: 503 });
    expect(await isEmpty()).toBe(true);
  });

  test("its stop comes from the registry's own pages, and names a commit as tabs do", async () => {
    expect((await ask("bcdfghjklmnpqrst", "DELETE", { origin: "http://evil.example" })).status).toBe(403);
    for (const name of ["quornaruthe", "0187740", "bcdfghjklmnpqrstb"]) expect((await ask(name, "DELETE")).status).toBe(400);
  });
});

test("what is good is kept, once; another key is refused, and the sealed key comes down without the key", async () => {
  const random = (length: number) => new Uint8Array(length).fill(length);
  const recoveryCode = "01234-56789-ABCDE-FGHJK-MNPQR-STVWX";
  const unitKey = await sealUnitKey(makeUnitKey(random), { passphrase: "fifteen characters", recoveryCode, random });
  // told to stop when it is written, it says so
  const first = await send({
    headers: { "x-commit": "tsrqpnmlkjhgfdcb" },
    body: commitOf([{ table: "person", row: personRow }], { unitKey }),
  });
  expect(first).toMatchObject({ status: 200 });
  if (first === "broken off") throw new Error("the server hung up");
  expect(JSON.parse(first.body)).toMatchObject({
    batch: 1,
    committed: { person: 1, segment: 0 },
    changed: { person: 0 },
    unchanged: { person: 0 },
  });
  const late = await fetch(`${registry.address}/intake/commit/tsrqpnmlkjhgfdcb`, {
    method: "DELETE",
    headers: { origin: registry.address },
  });
  expect(await late.json()).toEqual({ batch: 1 });
  const second = await send({ body: good });
  expect(second === "broken off" ? second : JSON.parse(second.body)).toMatchObject({ batch: null, unchanged: { person: 1 } });
  const other = await sealUnitKey(
    makeUnitKey((length) => new Uint8Array(length).fill(9)),
    { passphrase: "fifteen characters", recoveryCode, random },
  );
  const third = await send({ body: commitOf([{ table: "person", row: { ...personRow, sex: "female" } }], { unitKey: other }) });
  expect(third).toMatchObject({ status: 409 });
  expect(await inRegistry(registry.data, (open) => open.batches())).toHaveLength(1);

  const door = await (await fetch(`${registry.address}/intake/key`)).json();
  expect(door).toMatchObject({ unitKey, units: ["unit-1"], batch: 1 });
  const held = await (await fetch(`${registry.address}/intake/held`)).text();
  expect(
    held
      .trim()
      .split("\n")
      .map((one) => JSON.parse(one)),
  ).toEqual([{ table: "person", row: personRow }, { end: 1 }]);
});
