import type { HeldCorrection, Joined } from "@/lib/intake";

/** What the registry keeps beside its rows: numbers read as another's, fields corrected by hand. Pseudonyms and stripped values all. */
export type Beside = { readonly joins: readonly Joined[]; readonly corrections: readonly HeldCorrection[] };
