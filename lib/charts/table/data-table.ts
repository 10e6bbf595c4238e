export type TableColumn = {
  readonly id: string;
  readonly head: string;
  readonly unit?: string;
  readonly align: "start" | "end";
  /** The column of the estimate whose interval or bounds this is: a page may set it under the estimate. */
  readonly under?: string;
};
export type DataTable = {
  readonly columns: readonly TableColumn[];
  /** One cell a column, as written; `–` where there is no value. */
  readonly rows: readonly (readonly string[])[];
};

/** What stands in a cell without a value. */
export const noValue = "–";
