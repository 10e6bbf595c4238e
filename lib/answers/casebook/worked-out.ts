import { healingStatuses } from "@/lib/codebook";
import {
  courseOf,
  type FollowUpWindow,
  followUpWindows,
  healingStatus,
  indexDefinition,
  readIndex,
  type SegmentCase,
  type WindowStatus,
  windowStatus,
} from "@/lib/outcomes";
import type { Case } from "../frames/cases";

export const windowStatuses: readonly WindowStatus[] = ["seen", "due", "not-yet-due", "dead", "lost"];
const healingIndex = indexDefinition("surgery-to-consolidation");

/** What is worked out from a segment's own record, one value a row of the frame of segments; `NaN`, or −1 for a code: none. */
export type WorkedOutColumns = {
  readonly healingStatus: Int8Array;
  readonly timeToConsolidation: Float64Array;
  readonly surgeryToConsolidation: Float64Array;
  readonly lastFilm: Float64Array;
  readonly corticesAtLastFilm: Float64Array;
  readonly visits: Float64Array;
  /** By window: how the segment stands at it. */
  readonly windows: Readonly<Record<string, Int8Array>>;
};

/** What a row needs from elsewhere to stand at a window. */
export type Following = { readonly potentialDays: number; readonly diedOn: number | null; readonly lostOn: number | null };

/** Works a segment's columns out, row by row; `following` tells how long each could have been followed. */
export function workOut(cases: readonly Case[], following: (row: number) => Following): WorkedOutColumns {
  const number = () => new Float64Array(cases.length).fill(Number.NaN);
  const columns = {
    healingStatus: new Int8Array(cases.length),
    timeToConsolidation: number(),
    surgeryToConsolidation: number(),
    lastFilm: number(),
    corticesAtLastFilm: number(),
    visits: number(),
    windows: Object.fromEntries(followUpWindows.map(({ id }) => [id, new Int8Array(cases.length).fill(-1)])) as Record<string, Int8Array>,
  };
  for (const [row, { segment }] of cases.entries()) {
    const course = courseOf(segment);
    const after = (day: number | null) => (day === null ? Number.NaN : day - segment.surgeryDay);
    columns.healingStatus[row] = healingStatuses.indexOf(healingStatus(segment, course));
    columns.timeToConsolidation[row] = after(course.consolidationDay);
    columns.surgeryToConsolidation[row] = indexOf(segment);
    columns.lastFilm[row] = after(course.lastFilmDay);
    columns.corticesAtLastFilm[row] = corticesAt(segment, course.lastFilmDay);
    columns.visits[row] = segment.visits.length;
    for (const window of followUpWindows) {
      const status = statusAt(segment, following(row), window);
      const column = columns.windows[window.id];
      if (column) column[row] = status;
    }
  }
  return columns;
}

function indexOf(segment: SegmentCase): number {
  const reading = readIndex(segment, healingIndex, { boneNamed: true });
  return reading.reading === "measured" ? reading.value : Number.NaN;
}

function corticesAt({ visits }: SegmentCase, day: number | null): number {
  const film = day === null ? undefined : visits.find((visit) => visit.visitDay === day && visit.cortices !== null);
  return film?.cortices ?? Number.NaN;
}

/** Films of a segment: visits with cortices, and the film days that the sheet names. A consolidation day was read from a film too. */
function filmDays(segment: SegmentCase): readonly number[] {
  const visited = segment.visits.filter(({ cortices }) => cortices !== null).map(({ visitDay }) => visitDay);
  const named = [segment.lastNotHealedDay, segment.lastFilmDay, segment.consolidationDay].filter((day) => day !== null);
  return [...visited, ...named].map((day) => day - segment.surgeryDay);
}

function statusAt(segment: SegmentCase, { potentialDays, diedOn, lostOn }: Following, window: FollowUpWindow): number {
  if (Number.isNaN(potentialDays)) return -1;
  return windowStatuses.indexOf(windowStatus({ seenOn: filmDays(segment), potentialDays, diedOn, lostOn }, window));
}
