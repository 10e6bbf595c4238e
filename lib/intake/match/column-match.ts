import type { DropReason } from "./drop-reason";
import type { HeaderUnit } from "./header-unit";
import type { SheetKind } from "./sheet-kind";
import type { Target } from "./target";

/** What became of one column of a sheet: the field it fills, or why it is dropped. */
export type ColumnMatch = {
  readonly index: number;
  readonly header: string;
  readonly target: Target | null;
  readonly how: "alias" | "mapping" | null;
  /** As the header says it, or the mapping. */
  readonly unit: HeaderUnit | null;
  readonly dropped: DropReason | null;
  /** Other headers of the sheet that mean the same field: the person chooses. */
  readonly sharedWith: readonly string[];
};

export type SheetMatch = { readonly kind: SheetKind; readonly columns: readonly ColumnMatch[] };
