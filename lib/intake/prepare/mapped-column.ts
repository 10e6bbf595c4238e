import type { ColumnMatch } from "../match/column-match";

/** A column that fills a field. */
export type MappedColumn = ColumnMatch & { readonly target: NonNullable<ColumnMatch["target"]> };
