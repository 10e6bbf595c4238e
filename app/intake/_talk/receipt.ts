import type { TableName } from "@/lib/codebook";

/** How the registry answers a commit. */
export type Receipt = {
  /** `null`: nothing was new. */
  readonly batch: number | null;
  readonly contentHash: string;
  readonly committed: Readonly<Record<TableName, number>>;
  readonly changed: Readonly<Record<TableName, number>>;
  readonly unchanged: Readonly<Record<TableName, number>>;
  /** Rows held, of this batch or earlier, that wait for the row of their segment or patient. */
  readonly waiting: Readonly<Record<TableName, number>>;
};

/** Why a commit was refused: a sentence for people and a word for programs. */
export type Refusal = { readonly error: string; readonly message: string };
