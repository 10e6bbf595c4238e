import type { Mapping } from "../types";

/** A mapping that says nothing: columns match by their headers alone. */
export const emptyMapping: Mapping = { columns: {}, units: {}, dates: null, decimal: null, values: {}, answers: {} };
