import { type NextRequest, NextResponse } from "next/server";
import { guarded, refusalOf } from "./app/_page/door";

/** Everything passes here but the one address that takes a body too large to be held twice; that one stands the same checks itself. */
export const config = { matcher: ["/((?!intake/commit$).*)"] };

export function proxy(request: NextRequest): NextResponse {
  const refusal = refusalOf(request);
  if (refusal !== null) return guarded(new NextResponse(`${refusal}\n`, { status: 403, headers: { "Content-Type": "text/plain" } }));

  const { pathname } = request.nextUrl;
  const policy = contentPolicy(crypto.randomUUID().replaceAll("-", ""));
  const headers = new Headers(request.headers);
  // Next reads the nonce from the request's policy and puts it on its own scripts
  headers.set("Content-Security-Policy", policy);
  headers.set("x-path", pathname);
  const response = guarded(NextResponse.next({ request: { headers } }));
  response.headers.set("Content-Security-Policy", policy);
  if (!pathname.startsWith("/_next/static/")) response.headers.set("Cache-Control", "no-store");
  return response;
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
