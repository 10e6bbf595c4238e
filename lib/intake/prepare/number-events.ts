import type { AnyRow } from "./blank-row";
import { rowKey } from "./row-key";
import type { StrippedDraft } from "./stripped-draft";

/** Numbers the events of a row: 1, unless the same type falls on the same day again. The same event said twice is no second one. */
export function numberEvents(draft: StrippedDraft, held: (key: string) => AnyRow | undefined): void {
  const own = new Map<string, AnyRow>();
  for (const { table, row } of draft.parts) {
    if (table !== "event" || row.eventNumber !== null) continue;
    let number = 1;
    for (; number < 99; number++) {
      row.eventNumber = number;
      const key = rowKey("event", row);
      const other = own.get(key) ?? held(key);
      if (!other || (row.onsetDay !== null && isSame(other, row))) break;
    }
    own.set(rowKey("event", row), row);
  }
}

function isSame(a: AnyRow, b: AnyRow): boolean {
  return Object.keys(b).every((field) => a[field] === b[field]);
}
