import { request } from "node:http";
import { expect, inject, test } from "vitest";
import { complaintsOf, oneBrowser } from "./browser";

const { open } = oneBrowser();

type Reply = { readonly status: number; readonly headers: Record<string, string | string[] | undefined>; readonly body: string };

/** A request as anything but a browser could send it: `fetch` would not let Host be set. */
function send(path: string, { method = "GET", headers = {} }: { method?: string; headers?: Record<string, string> } = {}): Promise<Reply> {
  const { hostname, port } = new URL(inject("filled").address);
  return new Promise((resolve, reject) => {
    const outgoing = request({ hostname, port, path, method, headers }, (reply) => {
      const chunks: Buffer[] = [];
      reply.on("data", (chunk: Buffer) => chunks.push(chunk));
      reply.on("end", () => resolve({ status: reply.statusCode ?? 0, headers: reply.headers, body: Buffer.concat(chunks).toString() }));
    });
    outgoing.on("error", reject);
    outgoing.end();
  });
}

const port = () => new URL(inject("filled").address).port;

test.each(["evil.example", "127.0.0.1", "127.0.0.1:1", "localhost.evil.example", "127.0.0.1:80@evil.example"])(
  "a request for the host %s is refused, pages and files alike",
  async (host) => {
    for (const path of ["/", "/outcomes", "/icon.svg", "/_next/static/none.js", "/batches/undo"]) {
      const { status, body } = await send(path, { headers: { host } });
      expect(status).toBe(403);
      expect(body).toBe(`Lengthbook answers only at http://127.0.0.1:${port()}\n`);
    }
  },
);

test("both names of this machine are answered", async () => {
  expect((await send("/", { headers: { host: `localhost:${port()}` } })).status).toBe(200);
  expect((await send("/", { headers: { host: `127.0.0.1:${port()}` } })).status).toBe(200);
});

test.each([
  {},
  { origin: "http://evil.example" },
  { origin: "null" },
  { origin: "null", "sec-fetch-site": "cross-site" },
  { origin: "http://localhost" },
])("a change asked with %o is refused", async (headers) => {
  const { status } = await send("/batches/undo", { method: "POST", headers: { host: `127.0.0.1:${port()}`, ...headers } });
  expect(status).toBe(403);
});

test("another site may link to a page, not load it", async () => {
  const host = `127.0.0.1:${port()}`;
  const foreign = { host, "sec-fetch-site": "cross-site" };
  expect((await send("/", { headers: { ...foreign, "sec-fetch-mode": "navigate" } })).status).toBe(200);
  expect((await send("/outcomes", { headers: { ...foreign, "sec-fetch-mode": "no-cors" } })).status).toBe(403);
});

test("every reply carries the guards, and what holds data is not stored", async () => {
  for (const path of ["/", "/outcomes", "/nowhere"]) {
    const { headers } = await send(path, { headers: { host: `127.0.0.1:${port()}` } });
    expect(headers).toMatchObject({
      "x-content-type-options": "nosniff",
      "referrer-policy": "no-referrer",
      "cross-origin-opener-policy": "same-origin",
      "cross-origin-resource-policy": "same-origin",
    });
    expect(headers["cache-control"]).toContain("no-store");
    expect(headers["permissions-policy"]).toContain("camera=()");
    expect(headers).not.toHaveProperty("x-powered-by");
  }
});

test("the content policy is strict, and its nonce is new at each request", async () => {
  const policies = await Promise.all(
    [1, 2].map(async () => (await send("/", { headers: { host: `127.0.0.1:${port()}` } })).headers["content-security-policy"]),
  );
  for (const policy of policies) {
    expect(policy).toMatch(/^default-src 'none'; script-src 'nonce-[0-9a-f]{32}' 'strict-dynamic'; style-src 'self'; /);
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    for (const part of ["connect-src 'self'", "form-action 'self'", "base-uri 'none'", "frame-ancestors 'none'"])
      expect(policy).toContain(part);
  }
  expect(policies[0]).not.toBe(policies[1]);
});

test("a script without the nonce does not run, and an inline style does nothing", async () => {
  const page = await open();
  const complaints = complaintsOf(page);
  await page.goto(inject("filled").address);
  await page.evaluate(`
    const script = document.createElement("div");
    script.innerHTML = '<img src="/none" onerror="window.ran = true"><p id="red" style="color: rgb(255, 0, 0)">red</p>';
    document.body.append(script);`);
  await page.waitForTimeout(300);
  expect(await page.evaluate("window.ran === undefined")).toBe(true);
  expect(await page.evaluate("getComputedStyle(document.getElementById('red')).color")).not.toBe("rgb(255, 0, 0)");
  expect(complaints.some((complaint) => complaint.includes("Content Security Policy"))).toBe(true);
  await page.context().close();
});

test("a page asks nothing of any other host", async () => {
  const page = await open();
  const asked: string[] = [];
  page.on("request", (outgoing) => asked.push(new URL(outgoing.url()).host));
  await page.goto(`${inject("filled").address}/outcomes?by=bone`);
  await page.waitForLoadState("networkidle");
  expect(new Set(asked)).toEqual(new Set([new URL(inject("filled").address).host]));
  await page.context().close();
});
