/**
 * A batch's time as the ledger keeps it.
 * @throws RangeError unless it is a UTC time of whole seconds
 */
export function requireAt(at: string): string {
  const parsed = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/.test(at) ? Date.parse(at) : Number.NaN;
  if (Number.isNaN(parsed))
    throw new RangeError("a batch requires a UTC time of whole seconds such as 2026-01-31T09:30:00Z, received another form");
  return at;
}
