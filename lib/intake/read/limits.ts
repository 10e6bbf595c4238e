export type Limits = {
  readonly bytes: number;
  readonly rows: number;
  readonly columns: number;
  readonly cellCharacters: number;
};

/** What one file may hold. Above it the whole file is refused: a longer one is better brought in parts. */
export const defaultLimits: Limits = { bytes: 64 * 1024 * 1024, rows: 200_000, columns: 300, cellCharacters: 10_000 };
