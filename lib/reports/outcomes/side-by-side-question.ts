import type { Between } from "@/lib/answers";

export type SideBySideQuestion = {
  readonly between: Between;
  /** The family: outcomes chosen together, over which Holm's rule goes. */
  readonly measures: readonly string[];
  /** Covariates chosen beforehand, with their names. */
  readonly adjust: readonly { readonly field: string; readonly label: string }[];
  readonly test: boolean;
  readonly scheme: string | null;
  /** Pin-site infections left out of every count of complications. */
  readonly withoutPinSites?: boolean;
  readonly asOf: number | null;
};
