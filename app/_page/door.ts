/** What a request shows of itself: the part that the checks look at. */
type Shown = { readonly method: string; readonly headers: Headers };

/**
 * Why a request is refused; `null` when it may pass. Solo mode answers only to this machine: the Host must be ours (a foreign name that
 * points at 127.0.0.1 is a rebinding attack), and a request that another site's page makes is refused.
 */
export function refusalOf({ method, headers }: Shown): string | null {
  const port = process.env.LENGTHBOOK_PORT ?? process.env.PORT ?? "3000";
  const hosts = [`127.0.0.1:${port}`, `localhost:${port}`];
  const host = headers.get("host") ?? "";
  if (!hosts.includes(host)) return `Lengthbook answers only at http://${hosts[0]}`;
  if (!isOwnOrigin({ method, headers }, host)) return "Lengthbook takes requests from its own pages only";
  return isForeignFetch(headers) ? "Lengthbook’s answers are for its own pages only" : null;
}

/**
 * A browser names the origin of every request that changes something; one that names none doesn't come from a page of ours. A form of
 * a page that sends no referrer names `null`: then the browser's own word that the site is the same stands for it.
 */
function isOwnOrigin({ method, headers }: Shown, host: string): boolean {
  const origin = headers.get("origin");
  if (origin === null) return method === "GET" || method === "HEAD";
  if (origin === "null") return headers.get("sec-fetch-site") === "same-origin";
  return origin === `http://${host}`;
}

/** Another site may link here; it may not load a page of ours into its own. */
function isForeignFetch(headers: Headers): boolean {
  const site = headers.get("sec-fetch-site");
  const foreign = site === "cross-site" || site === "same-site";
  return foreign && headers.get("sec-fetch-mode") !== "navigate";
}

/** Puts the guards of every reply on one. */
export function guarded<T extends Response>(response: T): T {
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
