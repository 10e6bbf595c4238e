import type { Connection } from "@/db/open";

/** Keep a question under its result reference; one that is kept already stays as it is. */
export function keepQuestion(db: Connection, stamp: string, asked: string): void {
  if (questionOf(db, stamp) !== null) return;
  db.prepare("INSERT INTO question (stamp, asked) VALUES (?, ?) ON CONFLICT DO NOTHING").run(stamp, asked);
}

/** The question kept under a result reference. */
export function questionOf(db: Connection, stamp: string): string | null {
  const row = db.prepare("SELECT asked FROM question WHERE stamp = ?").get(stamp) as { asked: string } | undefined;
  return row?.asked ?? null;
}

/** Every question kept. */
export function questionsIn(db: Connection): readonly string[] {
  return db.prepare("SELECT asked FROM question ORDER BY stamp").pluck().all() as string[];
}
