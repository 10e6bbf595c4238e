/** The time as the ledger keeps it: UTC, whole seconds. */
export function now(): string {
  return new Date().toISOString().replace(/\.\d+Z$/, "Z");
}
