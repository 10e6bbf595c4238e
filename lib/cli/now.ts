/** The time as the registry keeps it: UTC, whole seconds. The command line is where the clock comes in. */
export function now(): string {
  return `${new Date().toISOString().slice(0, 19)}Z`;
}
