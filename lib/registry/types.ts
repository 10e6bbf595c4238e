import type { FindingCode, Rows, TableName } from "@/lib/codebook";

export type Counts = { readonly [T in CountName]: number };
/** Names of the tables in answers of the command line (ids.md §11). */
export type CountName = "persons" | "bodyMeasures" | "segments" | "visits" | "events" | "scores";

export type BatchKind = "intake" | "undo" | "correction" | "settings" | "join" | "part" | "erasure";
export type Batch = {
  readonly batch: number;
  readonly kind: BatchKind;
  /** ISO time in UTC, whole seconds. */
  readonly at: string;
  readonly counts: Counts;
  readonly contentHash: string;
  /** The batch that an undo put back. */
  readonly undoes: number | null;
};

/** How often each finding stood when the person committed. Nothing else of a finding ever reaches the registry. */
export type FindingCounts = { readonly [C in FindingCode]?: number };

export type CommitResult = {
  /** `null`: nothing was new. */
  readonly batch: number | null;
  readonly committed: Counts;
  readonly changed: Counts;
  readonly unchanged: Counts;
  /** Questions that only rows merged with what was held raise, by code: nobody was asked them. Kept with the batch's findings. */
  readonly asks: FindingCounts;
  readonly contentHash: string;
};

/** `blockedBy`: later batches that still stand and touched the same rows, oldest first: undo them before, the last of them first. */
export type UndoResult =
  | { readonly batch: number; readonly undoes: number; readonly contentHash: string }
  | { readonly blockedBy: readonly number[] };

/** The registry's state: cache and stamps go by it. */
export type State = { readonly batch: number; readonly erasures: number };

/**
 * Columns of a table as of a state. Codes are small integers into `codes` (−1 = not recorded); flags 1, 0, −1; numbers, counts and
 * days are NaN where not recorded; keyed and listed fields are integers into `labels`.
 */
export type FrameColumn =
  | { readonly kind: "code"; readonly codes: readonly string[]; readonly values: Int16Array }
  | { readonly kind: "flag"; readonly values: Int8Array }
  | { readonly kind: "label"; readonly labels: readonly string[]; readonly values: Int32Array }
  | { readonly kind: "number"; readonly values: Float64Array };

export type Frame = {
  readonly table: TableName;
  readonly length: number;
  /** Rows stand in the order of their entities. The entity of each row: the number of its identity, stable for ever (a case's page is `/casebook/ENTITY-OF-PERSON`). */
  readonly entity: Int32Array;
  /** The person's entity of each row; in the frame of persons the row's own. */
  readonly personEntity: Int32Array;
  /** The segment's entity of each segment, visit and event (−1 = an event of the person); `null` for the other tables. */
  readonly segmentEntity: Int32Array | null;
  readonly columns: Readonly<Record<string, FrameColumn>>;
};

export type { SealedKey, UnitKeyRecord } from "@/lib/intake";

/** The unit's own lists (ids.md §11, `settings`). */
export type Settings = {
  readonly units: readonly string[];
  readonly scores: readonly {
    readonly code: string;
    readonly range: readonly [number, number];
    readonly direction: "higher" | "lower";
    readonly minimalDifference: number | null;
  }[];
  readonly difficultyScore: string | null;
  readonly auditYearStartsIn: number;
  readonly toleranceMm: number;
  readonly yearOnly: boolean;
  /** Indices of the unit's own, beside the built-in ones. */
  readonly indices: readonly {
    readonly id: string;
    readonly name: string;
    readonly from: "surgery" | "distraction-start" | "distraction-end";
    readonly to: "distraction-end" | "consolidation" | "full-weight-bearing" | "fixator-removal" | "end-of-treatment";
    readonly criterion: NonNullable<Rows["segment"]["consolidationCriterion"]> | null;
    readonly per: "gainMm" | "gainFinalMm" | "plannedGainMm" | "plannedGainFinalMm";
    readonly rescue: "counted" | "competing";
    readonly unit: "days/cm" | "mm/day";
  }[];
};
