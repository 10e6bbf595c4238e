const mostKept = 256;
/** Rows that answers hold, of all caches together: two million are some two hundred megabytes. */
const mostRows = 2_000_000;

type Entry = { readonly answer: Promise<unknown>; rows: number };

/** All answers in one order, the least recently asked first. */
const kept = new Map<string, Entry>();
let rowsKept = 0;
let caches = 0;

/**
 * Answers by stamp, the least recently asked dropped first. A stamp names its state, so an entry never goes stale.
 * @param rowsOf how many rows an answer holds, where it holds them one by one
 */
export function answerCache<Answer>(rowsOf: (answer: Answer) => number = () => 0) {
  const cache = ++caches;
  return (stamp: string, work: () => Promise<Answer>): Promise<Answer> => {
    const id = `${cache} ${stamp}`;
    const held = kept.get(id);
    const entry = held ?? { answer: work(), rows: 0 };
    kept.delete(id);
    kept.set(id, entry);
    if (!held)
      entry.answer.then(
        (answer) => {
          if (kept.get(id) !== entry) return;
          entry.rows = rowsOf(answer as Answer);
          rowsKept += entry.rows;
          dropOldest();
        },
        // an answer that failed is not kept: the next to ask tries again
        () => drop(id, entry),
      );
    dropOldest();
    return entry.answer as Promise<Answer>;
  };
}

/** The newest stays, however large. */
function dropOldest(): void {
  for (const [id, entry] of kept) {
    if (kept.size <= 1 || (kept.size <= mostKept && rowsKept <= mostRows)) return;
    drop(id, entry);
  }
}

function drop(id: string, entry: Entry): void {
  if (kept.get(id) !== entry) return;
  kept.delete(id);
  rowsKept -= entry.rows;
}
