import { closeRegistryFile, openRegistryFile } from "@/db/open";
import type { TableName } from "@/lib/codebook";
import { checkRows, type StrippedRows, type UnitKeyRecord } from "@/lib/intake";
import { commitLines, type LinesOptions } from "./background/commit-lines";
import type { Check } from "./commit/check-brought";
import { type CommitOptions, commitRows } from "./commit/commit";
import { type CorrectOptions, type CorrectResult, correctField } from "./correct/correct";
import { type Correction, correctionsAsOf } from "./correct/standing";
import { type Join, joinsAsOf } from "./join/groups";
import { type JoinOptions, type JoinResult, joinPersons, partPerson } from "./join/join";
import { cohortsIn, type SavedCohort, saveCohort } from "./keep/cohorts";
import { batchesIn, stateOf } from "./keep/ledger";
import { keepQuestion, questionOf, questionsIn } from "./keep/questions";
import { keepSettings, settingsAsOf } from "./keep/settings";
import { keepUnitKey, unitKeyIn } from "./keep/unit-key";
import { hashAsOf } from "./read/content-hash";
import { framesOf } from "./read/frames";
import { type HeldRow, rowsAsOf } from "./read/rows";
import { type CaseRow, rowsOfCase, versionsOfCase } from "./read/rows-of-case";
import type { RowVersion } from "./read/versions";
import { waitingAsOf } from "./read/waiting";
import { inTransaction } from "./transaction";
import { inTurn } from "./turns";
import type { Batch, CommitResult, Counts, Frame, Settings, State, UndoResult } from "./types";
import { UndoBlocked, undoBatch } from "./undo/undo";

/** A registry, open. Promises throughout, whatever the driver. Every writer is all or nothing; writers take turns, readers don't wait. */
export type Registry = {
  /** The folder that holds it. */
  readonly folder: string;
  readonly state: () => Promise<State>;
  /** Oldest first, numbered without gaps. */
  readonly batches: () => Promise<readonly Batch[]>;
  /** @throws RowsRefused, UnitKeyRefused, NothingCommitted, RangeError for a time that isn't one */
  readonly commit: (rows: StrippedRows, options: CommitOptions) => Promise<CommitResult>;
  /**
   * Commits the lines of `encodeCommit` as they come, each checked on arrival; what the bytes' own iteration throws comes through. A large
   * commit has a thread of its own, so that this one goes on answering, and can be stopped wherever it is: nothing is then written.
   * @throws WireError for a line that may not come in, TypeError for bytes that are no UTF-8, StopTooLate, and what `commit` throws
   */
  readonly commitLines: (bytes: AsyncIterable<Uint8Array>, options: LinesOptions) => Promise<CommitResult>;
  /** @throws RangeError when there is no such batch; NothingCommitted */
  readonly undo: (batch: number, options: { readonly at: string }) => Promise<UndoResult>;
  /** SHA-256 of what was held as of a batch, worked out anew; of the newest when none is named. @throws RangeError for a batch to come */
  readonly contentHash: (batch?: number) => Promise<string>;
  /** Columns of a table as of a state, in typed arrays kept for the last three states. Not to be written to. @throws RangeError */
  readonly frameAsOf: (state: State, table: TableName, columns: readonly string[]) => Promise<Frame>;
  /** What is held now, tables in codebook order, rows in the order of their natural keys; a page of persons at a time. */
  readonly held: () => AsyncIterable<HeldRow>;
  /**
   * Rows of `held` that wait: sheets may come in any order, and a visit, event, score or body measure may be held before its segment's or
   * person's own row. No frame has them until that row comes.
   */
  readonly waiting: (asOf?: number) => Promise<Counts>;
  /** Rows of a case, by the person's entity, as of a batch; none of a second number, whose rows are the first's. */
  readonly rowsOf: (person: number, asOf?: number) => Promise<readonly CaseRow[]>;
  /** Every version of every row of a case, with the numbers joined to it as of a batch: how it came to be. */
  readonly versionsOf: (person: number, asOf?: number) => Promise<readonly RowVersion[]>;
  /** Numbers that are read as another's, as of a batch. */
  readonly joins: (asOf?: number) => Promise<readonly Join[]>;
  /** Two numbers of one patient. @throws NotOnePatient, RangeError */
  readonly join: (options: JoinOptions) => Promise<JoinResult>;
  /** A number that was joined wrongly gets its own again. @throws RangeError when it isn't joined */
  readonly part: (options: Pick<JoinOptions, "person" | "at">) => Promise<Omit<JoinResult, "same">>;
  /** Fields corrected by hand that stand as of a batch, each with what the sheet said. */
  readonly corrections: (asOf?: number) => Promise<readonly Correction[]>;
  /** Corrects one field of a row by hand; it holds until the sheet's own value changes. @throws RowsRefused, RangeError */
  readonly correct: (options: CorrectOptions) => Promise<CorrectResult>;
  readonly unitKey: () => Promise<UnitKeyRecord | null>;
  /** Keeps the same key sealed again. @throws UnitKeyRefused for another key */
  readonly saveUnitKey: (record: UnitKeyRecord) => Promise<void>;
  readonly settings: (asOf?: number) => Promise<Settings>;
  /** `batch: null`: they were so already. @throws RangeError naming the setting that can't be */
  readonly saveSettings: (settings: Settings, options: { readonly at: string }) => Promise<{ readonly batch: number | null }>;
  /** Keeps a question under its result reference; asked again, nothing is written. */
  readonly keepQuestion: (stamp: string, asked: string) => Promise<void>;
  /** The question kept under a result reference; null when there is none. */
  readonly findQuestion: (stamp: string) => Promise<string | null>;
  /** Cohorts saved under names, as canonical JSON. */
  readonly cohorts: () => Promise<readonly SavedCohort[]>;
  /** @throws RangeError for a name that can't be one */
  readonly saveCohort: (cohort: SavedCohort) => Promise<void>;
  readonly questions: () => Promise<readonly string[]>;
  readonly close: () => Promise<void>;
};

export type OpenOptions = {
  /** Make the registry when the folder has none. */
  readonly create?: boolean;
  /** Intake's check of stripped rows, run again inside each commit. */
  readonly check?: Check;
};

/**
 * Opens the registry of a folder.
 * @throws RegistryNotOpened when it can't be, with the trouble and a sentence for people
 */
export async function openRegistry(folder: string, { create = false, check = checkRows }: OpenOptions = {}): Promise<Registry> {
  const db = openRegistryFile(folder, { create });
  const frames = framesOf(db);
  const newest = () => stateOf(db).batch;
  const turn = inTurn();
  const write = <T>(work: () => T) => turn(() => inTransaction(db, work));
  return {
    folder,
    state: async () => stateOf(db),
    batches: async () => batchesIn(db),
    commit: (rows, options) => write(() => commitRows(db, rows, options, check)),
    commitLines: (bytes, { at, signal, largeFrom, onPace }) =>
      commitLines(bytes, {
        task: { folder, at },
        signal,
        turn,
        newest,
        onPace,
        // a check of the caller's own stays in the caller's thread
        largeFrom: check === checkRows ? largeFrom : Number.POSITIVE_INFINITY,
        here: ({ rows, ...told }) => inTransaction(db, () => commitRows(db, rows, { ...told, at }, check)),
      }),
    undo: async (batch, { at }) => {
      try {
        return await write(() => undoBatch(db, batch, at));
      } catch (error) {
        if (error instanceof UndoBlocked) return { blockedBy: error.blockedBy };
        throw error;
      }
    },
    contentHash: async (batch = newest()) => hashAsOf(db, requireBatch(batch, newest())),
    frameAsOf: async (state, table, columns) => frames.asOf(state, table, columns),
    held: async function* () {
      yield* rowsAsOf(db, newest());
    },
    waiting: async (asOf = newest()) => waitingAsOf(db, requireBatch(asOf, newest())),
    rowsOf: async (person, asOf = newest()) => rowsOfCase(db, person, requireBatch(asOf, newest())),
    versionsOf: async (person, asOf = newest()) => versionsOfCase(db, person, requireBatch(asOf, newest())),
    joins: async (asOf = newest()) => joinsAsOf(db, requireBatch(asOf, newest())),
    join: (options) => write(() => joinPersons(db, options)),
    part: (options) => write(() => partPerson(db, options)),
    corrections: async (asOf = newest()) => correctionsAsOf(db, requireBatch(asOf, newest())),
    correct: (options) => write(() => correctField(db, options, check)),
    unitKey: async () => unitKeyIn(db),
    saveUnitKey: (record) => write(() => keepUnitKey(db, record)),
    settings: async (asOf = newest()) => settingsAsOf(db, requireBatch(asOf, newest())),
    saveSettings: async (settings, { at }) => ({ batch: await write(() => keepSettings(db, settings, at)) }),
    keepQuestion: async (stamp, asked) => {
      // a question asked before doesn't wait for a commit
      if (questionOf(db, stamp) === null) await turn(() => keepQuestion(db, stamp, asked));
    },
    findQuestion: async (stamp) => questionOf(db, stamp),
    cohorts: async () => cohortsIn(db),
    saveCohort: (cohort) => turn(() => saveCohort(db, cohort)),
    questions: async () => questionsIn(db),
    close: async () => closeRegistryFile(db),
  };
}

function requireBatch(batch: number, newest: number): number {
  if (!Number.isInteger(batch) || batch < 0 || batch > newest)
    throw new RangeError(`the registry requires a batch of 0 to ${newest}, received ${batch}`);
  return batch;
}
