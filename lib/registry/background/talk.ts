import type { CommitPace } from "../pace";
import type { CommitResult } from "../types";
import type { Failure } from "./failure";

/** What a worker is started with. */
export type Task = { readonly folder: string; readonly at: string };
/** Pieces of the text of a commit, then its end. */
export type ToWorker = { readonly text: string } | { readonly end: true };
/** Each piece is answered before the next is sent, so that no more than one waits; then how far the commit is, and what came of it all. */
export type FromWorker = { readonly pace: CommitPace } | Answer;
export type Answer = { readonly taken: true } | { readonly done: CommitResult } | { readonly failed: Failure };
