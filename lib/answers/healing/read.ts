import type { Reading } from "@/lib/outcomes";

/** What a clock read on a segment, and whose it is. */
type Whose = { readonly person: number; readonly segment: number };
export type Measured = Extract<Reading, { reading: "measured" }> & Whose;
export type Censored = Extract<Reading, { reading: "censored" }> & Whose;
