import { Stopped, WorkFailed } from "./worker-door";

const lost =
  "The part of this page that works on your file gave up, perhaps for want of memory. Nothing was sent. Reload the page, and bring the file again, in parts if it is a large one.";

const stoppedWords = "Stopped. Nothing was changed.";

/** What went wrong, in words for people. Messages that were made for programs stay out. */
export function troubleOf(error: unknown): string {
  if (error instanceof Stopped) return stoppedWords;
  if (!(error instanceof WorkFailed)) return lost;
  if (error.name === "ServerRefused") return error.message;
  if (error.name === "WorkerLost") return lost;
  return `Something went wrong that this page did not foresee (${error.name}). Nothing was sent or kept. Reload the page and bring the file again.`;
}
