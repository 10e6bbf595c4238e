import { healingStatuses } from "@/lib/codebook";
import { followUpWindows } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { columnOf, valueAt } from "../frames/read";
import type { Book } from "./book";
import { windowStatuses } from "./worked-out";

/** Lists that the clerk works through. They tell what the data lack as of the last file; none is a recall list. */
export type CasebookList = { readonly id: string; readonly title: string; readonly columns: readonly string[] };

const twelveMonthsDays = 365;
const filmColumns = (id: string) => ["bone", "side", "surgeryYear", "healingStatus", "lastFilm", "corticesAtLastFilm", `film-${id}`];

export const casebookLists: readonly CasebookList[] = [
  {
    id: "healing-date-missing",
    title: "healing date missing",
    columns: ["bone", "side", "surgeryYear", "lastFilm", "corticesAtLastFilm", "daysToLastFollowUp", "daysToFullWeightBearing"],
  },
  {
    id: "not-healed-at-12-months",
    title: "no consolidation day at 12 months",
    columns: ["bone", "side", "surgeryYear", "surgeryQuarter", "healingStatus", "lastFilm", "corticesAtLastFilm", "daysToLastFollowUp"],
  },
  ...followUpWindows.map(({ id, label }) => ({ id: `film-missing-${id}`, title: `film at ${label} missing`, columns: filmColumns(id) })),
  {
    id: "events-not-collected",
    title: "events not collected",
    columns: ["bone", "side", "surgeryYear", "device", "eventsLookedFor", "events", "healingStatus"],
  },
  {
    id: "permitted-use-not-recorded",
    title: "permitted use not recorded",
    columns: ["bone", "side", "surgeryYear", "device", "permittedUse", "healingStatus"],
  },
];

export function casebookList(id: string): CasebookList | undefined {
  return casebookLists.find((list) => list.id === id);
}

/** Whether a row is on a list. @throws RangeError when there is no such list */
export async function listTest(registry: Registry, book: Book, id: string): Promise<(row: number) => boolean> {
  const status = (row: number) => healingStatuses[book.worked.healingStatus[row] ?? -1];
  if (id === "healing-date-missing") return (row) => status(row) === "healing-date-missing";
  if (id === "not-healed-at-12-months") {
    // neither healed nor recorded as ended: a death or an amputation asks for no film
    const isPast = (row: number) => (book.potentialDays[row] ?? 0) >= twelveMonthsDays;
    return (row) => status(row) !== "healed" && status(row) !== "ended-unhealed" && isPast(row);
  }
  const window = followUpWindows.find((one) => id === `film-missing-${one.id}`);
  if (window) return (row) => windowStatuses[book.worked.windows[window.id]?.[row] ?? -1] === "due";
  return recordedTest(registry, book, id);
}

async function recordedTest(registry: Registry, book: Book, id: string): Promise<(row: number) => boolean> {
  if (id === "events-not-collected") {
    const column = columnOf(await registry.frameAsOf(book.state, "segment", ["eventsLookedFor"]), "eventsLookedFor");
    return (row) => (valueAt(column, row) ?? "not-collected") === "not-collected";
  }
  if (id === "permitted-use-not-recorded") {
    const column = columnOf(await registry.frameAsOf(book.state, "person", ["permittedUse"]), "permittedUse");
    return (row) => valueAt(column, book.personRow[row] ?? -1) === null;
  }
  throw new RangeError(`casebook requires a list among ${casebookLists.map((list) => list.id).join(", ")}, received another`);
}
