// biome-ignore-all assist/source/organizeImports: the door stands under headings, not in alphabetical order
// What intake says and makes
export type {
  DateOrder,
  Delimiter,
  Encoding,
  Finding,
  LengthUnit,
  Mapping,
  Origin,
  Sheet,
  Stripped,
  StrippedRows,
  TimeUnit,
} from "./types";

// The unit's key
export * from "./key";

// Strip
export * from "./strip";

// Identifiers that look wrong where they stand
export * from "./detect";
