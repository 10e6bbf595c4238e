import type { CasebookKeys } from "@/lib/answers";
import type { UnitKeyRecord } from "@/lib/intake";

/** What comes down so that numbers can be matched in the tab. */
export type WhoseKeys = CasebookKeys & { readonly unitKey: UnitKeyRecord | null; readonly units: readonly string[] };

/** What the page asks of the worker. Numbers and passphrase stay between the two. */
export type WhoseAsked =
  | { readonly open: { readonly passphrase: string; readonly search: string } }
  | { readonly find: { readonly unit: string; readonly typed: string; readonly file: File | null } }
  /** Two numbers, as written, of one patient: the second becomes part of the first. */
  | { readonly join: { readonly unit: string; readonly first: string; readonly second: string } };

/**
 * A number as the clerk wrote it, and the case that it is; `null`: none is held under it. `own`: the number of the case that it was, or would be,
 * by itself.
 */
export type WhoseFound = {
  readonly number: string;
  readonly case: number | null;
  readonly own: number | null;
  readonly listed: boolean;
  readonly unit: string;
};
export type WhoseAnswer =
  | { readonly opened: { readonly units: readonly string[]; readonly cases: number; readonly listed: number } }
  | { readonly notOpened: string }
  | { readonly joined: { readonly batch: number; readonly case: number } }
  | { readonly found: readonly WhoseFound[]; readonly from: string }
  | { readonly failed: string };
