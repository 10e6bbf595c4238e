import type { CurvePoint } from "../types";

/** `censored`: followed to this day and not healed. */
export type HealingCurvePoint = CurvePoint & { readonly censored: number };
