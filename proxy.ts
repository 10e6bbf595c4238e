import { type NextRequest, NextResponse } from "next/server";

/**
 * Everything passes here. Solo mode answers only to this machine: the Host must be ours (a foreign name that points at 127.0.0.1 is a
 * rebinding attack), and a request that another site's page makes is refused.
 */
export function proxy(request: NextRequest): NextResponse {
  const refusal = refuse(request);
  if (refusal !== null) return guarded(new NextResponse(`${refusal}\n`, { status: 403, headers: { "Content-Type": "text/plain" } }));

  const nonce = crypto.randomUUID().replaceAll("-", "");
  const policy = contentPolicy(nonce);
  const headers = new Headers(request.headers);
  // Next reads the nonce from the request's policy and puts it on its own scripts
  headers.set("Content-Security-Policy", policy);
  headers.set("x-path", request.nextUrl.pathname);
  const response = guarded(NextResponse.next({ request: { headers } }));
  response.headers.set("Content-Security-Policy", policy);
  if (!request.nextUrl.pathname.startsWith("/_next/static/")) response.headers.set("Cache-Control", "no-store");
  return response;
}

function refuse(request: NextRequest): string | null {
  const port = process.env.LENGTHBOOK_PORT ?? process.env.PORT ?? "3000";
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  const host = request.headers.get("host") ?? "";
  if (!hosts.includes(host)) return `Lengthbook answers only at http://${hosts[0]}`;
  const origin = request.headers.get("origin");
  const asks = request.method === "GET" || request.method === "HEAD";
  // a browser names the origin of every request that changes something; one that names none doesn't come from a page of ours
  if (origin === null ? !asks : origin !== `http://${host}`) return "Lengthbook takes requests from its own pages only";
  return isForeignFetch(request) ? "Lengthbook's answers are for its own pages only" : null;
}

/** Another site may link here; it may not load a page of ours into its own. */
function isForeignFetch(request: NextRequest): boolean {
  const site = request.headers.get("sec-fetch-site");
  const foreign = site === "cross-site" || site === "same-site";
  return foreign && request.headers.get("sec-fetch-mode") !== "navigate";
}

function contentPolicy(nonce: string): string {
  const developing = process.env.NODE_ENV === "development";
  return [
    "default-src 'none'",
    `script-src 'nonce-${nonce}' 'strict-dynamic'${developing ? " 'unsafe-eval'" : ""}`,
    `style-src 'self'${developing ? " 'unsafe-inline'" : ""}`,
    "img-src 'self' blob:",
    "font-src 'self'",
    "connect-src 'self'",
    "worker-src 'self'",
    "form-action 'self'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join("; ");
}

function guarded(response: NextResponse): NextResponse {
  for (const [name, value] of guards) response.headers.set(name, value);
  return response;
}

const guards = [
  ["X-Content-Type-Options", "nosniff"],
  ["Referrer-Policy", "no-referrer"],
  ["Cross-Origin-Opener-Policy", "same-origin"],
  ["Cross-Origin-Resource-Policy", "same-origin"],
  ["X-Frame-Options", "DENY"],
  [
    "Permissions-Policy",
    "accelerometer=(), autoplay=(), camera=(), display-capture=(), fullscreen=(), geolocation=(), gyroscope=(), hid=(), idle-detection=(), local-fonts=(), magnetometer=(), microphone=(), midi=(), payment=(), publickey-credentials-get=(), screen-wake-lock=(), serial=(), usb=(), xr-spatial-tracking=()",
  ],
] as const;
