import type { CommitPace } from "@/lib/registry";

/** How far a commit is on the server; rows on their way are counted in bytes. */
export type PaceOfCommit = CommitPace | { readonly step: "take"; readonly done: number; readonly of: number };
/** What came of a commit that was told to stop: `null`, nothing was written; a batch, when the word came too late. */
export type StoppedCommit = { readonly batch: number | null };

/** The header by which a tab names its commit, so that it can ask how far it is and stop it. */
export const commitHeader = "x-commit";
/** A name is chance: letters that make no word. */
export const commitName = /^[b-df-hj-np-t]{16}$/;
