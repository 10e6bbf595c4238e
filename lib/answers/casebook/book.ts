import type { Frame, Registry, State } from "@/lib/registry";
import { casesOf } from "../frames/cases";
import { columnOf, rowsByEntity, valueAt } from "../frames/read";
import { closingDay, daysSince } from "./closing-day";
import { type Following, type WorkedOutColumns, workOut } from "./worked-out";

/** The segments held as of a state, in the order in which they came, with what is worked out of each. */
export type Book = {
  readonly state: State;
  readonly length: number;
  /** The segments' identities and their persons', row by row. */
  readonly segments: Int32Array;
  readonly cases: Int32Array;
  /** The row of each segment's person in the frame of persons. */
  readonly personRow: Int32Array;
  readonly worked: WorkedOutColumns;
  readonly eventsHeld: Float64Array;
  /** Days that could have passed since each surgery up to the last file brought in; `NaN` before the first. */
  readonly potentialDays: Float64Array;
  /** The day of that file, as days since 1970. */
  readonly closing: number | null;
};

const mostKept = 2;
const kept = new Map<string, Promise<Book>>();

/** The book of a state, made once and kept for the last two asked for. */
export function bookOf(registry: Registry, state: State): Promise<Book> {
  const name = `${registry.folder} ${state.batch} ${state.erasures}`;
  const book = kept.get(name) ?? makeBook(registry, state);
  kept.delete(name);
  kept.set(name, book);
  book.catch(() => kept.delete(name));
  for (const oldest of kept.keys()) if (kept.size > mostKept) kept.delete(oldest);
  return book;
}

async function makeBook(registry: Registry, state: State): Promise<Book> {
  const cases = await casesOf(registry, state, {}, []);
  const segments = await registry.frameAsOf(state, "segment", ["surgeryDay", "surgeryYear", "surgeryQuarter"]);
  const persons = await registry.frameAsOf(state, "person", ["followUpStatus", "followUpStatusDay", "line"]);
  const rowOf = rowsByEntity(persons.entity);
  const personRow = segments.personEntity.map((person) => rowOf.get(person) ?? -1);
  const closing = closingDay(await registry.batches(), state.batch);
  const potentialDays = Float64Array.from({ length: segments.length }, (_, row) => potentialOf(segments, row, closing));
  return {
    state,
    length: segments.length,
    segments: segments.entity,
    cases: segments.personEntity,
    personRow,
    worked: workOut(cases, (row) => followingOf(segments, row, persons, personRow[row] ?? -1, potentialDays)),
    eventsHeld: await eventsHeld(registry, state, segments),
    potentialDays,
    closing,
  };
}

function potentialOf(segments: Frame, row: number, closing: number | null): number {
  const [year, quarter] = [valueAt(columnOf(segments, "surgeryYear"), row), valueAt(columnOf(segments, "surgeryQuarter"), row)];
  return closing === null || typeof year !== "number" ? Number.NaN : daysSince(year, quarter as number | null, closing);
}

function followingOf(segments: Frame, row: number, persons: Frame, person: number, potentialDays: Float64Array): Following {
  const status = person < 0 ? null : valueAt(columnOf(persons, "followUpStatus"), person);
  const day = person < 0 ? null : valueAt(columnOf(persons, "followUpStatusDay"), person);
  const surgery = valueAt(columnOf(segments, "surgeryDay"), row);
  // without its day, a status is taken as reached at once
  const on = typeof day === "number" && typeof surgery === "number" ? day - surgery : 0;
  const left = status === "lost" || status === "transferred" || status === "withdrew";
  return { potentialDays: potentialDays[row] ?? Number.NaN, diedOn: status === "died" ? on : null, lostOn: left ? on : null };
}

async function eventsHeld(registry: Registry, state: State, segments: Frame): Promise<Float64Array> {
  const events = await registry.frameAsOf(state, "event", []);
  const counts = new Map<number, number>();
  for (const segment of events.segmentEntity ?? []) counts.set(segment, (counts.get(segment) ?? 0) + 1);
  return Float64Array.from(segments.entity, (entity) => counts.get(entity) ?? 0);
}
