import { logUpper, normalHazard } from "./normal-tail";

const halfLogTwoPi = 0.5 * Math.log(2 * Math.PI);

/**
 * Log-likelihood of one row and its derivatives, for z = θ·y − η with y the standardised log time:
 * [ℓ, ∂η, ∂θ, ∂ηη, ∂ηθ, ∂θθ].
 * In (η, θ) = (xβ/σ, 1/σ) the log-likelihood is concave, exact, censored or between two days (Olsen 1978, Econometrica 46:1211-1215;
 * Burridge 1981, J R Stat Soc B 43:41-45), so that Newton's method has one summit to find.
 */
export type SpanTerm = Float64Array;

/** Fills `term` for an exact log time y. */
export function exactTerm(term: SpanTerm, y: number, eta: number, theta: number): void {
  const z = theta * y - eta;
  term[0] = Math.log(theta) - 0.5 * z * z - halfLogTwoPi;
  term[1] = z;
  term[2] = 1 / theta - z * y;
  term[3] = -1;
  term[4] = y;
  term[5] = -1 / (theta * theta) - y * y;
}

/** Fills `term` for a log time between a and b; a may be −Infinity, b Infinity, a < b. */
export function spanTerm(term: SpanTerm, a: number, b: number, eta: number, theta: number): void {
  const za = theta * a - eta;
  const zb = theta * b - eta;
  // Both tails are taken on the side where they are small.
  if (za + zb > 0) fill(term, a, b, za, zb, 1);
  else fill(term, -b, -a, -zb, -za, -1);
}

/**
 * P = Q(za) − Q(zb); A = density(za)/P and B = density(zb)/P stay finite however far out both ends lie.
 * The lower end is finite here: an open one has been turned to the upper side.
 */
function fill(term: SpanTerm, a: number, b: number, za: number, zb: number, sign: 1 | -1): void {
  const logA = logUpper(za);
  const ratio = zb === Infinity ? -Infinity : logUpper(zb) - logA;
  const share = -Math.expm1(ratio); // P / Q(za)
  const densityA = normalHazard(za) / share;
  const densityB = zb === Infinity ? 0 : (normalHazard(zb) * Math.exp(ratio)) / share;
  const atB = densityB === 0 ? 0 : b; // an infinite end has no weight, and infinity times zero is no number
  const aa = za * densityA - densityA * densityA;
  const bb = densityB === 0 ? 0 : -zb * densityB - densityB * densityB;
  const ab = densityA * densityB;
  term[0] = logA + Math.log(share);
  term[1] = sign * (densityA - densityB);
  term[2] = densityB * atB - densityA * a;
  term[3] = aa + 2 * ab + bb;
  term[4] = -sign * (aa * a + ab * (a + atB) + bb * atB);
  term[5] = aa * a * a + 2 * ab * a * atB + bb * atB * atB;
}
