import type { CommitResult, StopTooLate } from "@/lib/registry";
import { isNamed } from "../../_data/is-named";
import type { PaceOfCommit } from "../_talk/commit";

/** A commit in hand, or one of the last few: how far it is, and the batch that came of it. */
type InHand = { readonly stop: AbortController; pace: PaceOfCommit | null; ended: Promise<number | null> };

// routes are bundled apart: what they share hangs where all of them see it
const shared = globalThis as typeof globalThis & { lengthbookCommits?: Map<string, InHand> };
const mostKept = 16;

function commits(): Map<string, InHand> {
  shared.lengthbookCommits ??= new Map();
  return shared.lengthbookCommits;
}

function inHand(name: string): InHand {
  const known = commits().get(name) ?? { stop: new AbortController(), pace: null, ended: Promise.resolve(null) };
  commits().set(name, known);
  for (const oldest of commits().keys()) if (commits().size > mostKept) commits().delete(oldest);
  return known;
}

type Commit = (hooks: { readonly signal: AbortSignal; readonly onPace: (pace: PaceOfCommit) => void }) => Promise<CommitResult>;

/** Does a commit under the name that its tab gave it. A stop that came before it holds. */
export function commitAs(name: string, commit: Commit): Promise<CommitResult> {
  const own = inHand(name);
  const onPace = (pace: PaceOfCommit) => {
    own.pace = pace;
  };
  const work = commit({ signal: own.stop.signal, onPace });
  own.ended = work.then(
    ({ batch }) => batch,
    (error: unknown) => (isNamed<StopTooLate>(error, "StopTooLate") ? error.batch : null),
  );
  return work;
}

export function paceOf(name: string): PaceOfCommit | null {
  return commits().get(name)?.pace ?? null;
}

/** Stops a commit wherever it is, and waits until it is over. @returns the batch that it wrote, if the word came too late */
export async function stopCommit(name: string): Promise<number | null> {
  const { stop, ended } = inHand(name);
  stop.abort();
  return ended;
}
