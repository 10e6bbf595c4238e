import type { Field } from "@/lib/codebook";
import type { HeaderUnit } from "../match/header-unit";
import type { Target } from "../match/target";
import type { DecimalMark } from "../values/number";

/** How the cells of a column are read, all that a file leaves open being settled. */
export type Reading =
  | { readonly as: "text" }
  | { readonly as: "birth-date" | "date" }
  | { readonly as: "duration"; readonly unit: HeaderUnit; readonly mark: DecimalMark; readonly typical: number | null }
  | { readonly as: "number"; readonly unit: HeaderUnit | null; readonly mark: DecimalMark; readonly typical: number | null }
  | { readonly as: "code" };

export type ColumnPlan = {
  readonly index: number;
  readonly header: string;
  readonly target: Target;
  readonly field: Field | null;
  readonly reading: Reading;
};
