import type { UnitKeyRecord } from "@/lib/intake";

/** What the server tells of the registry before a file is brought: nothing of a case. */
export type Door = {
  readonly unitKey: UnitKeyRecord | null;
  readonly units: readonly string[];
  readonly scores: readonly string[];
  readonly auditYearStartsIn: number;
  readonly yearOnly: boolean;
  /** Newest batch; 0 before the first. */
  readonly batch: number;
};
