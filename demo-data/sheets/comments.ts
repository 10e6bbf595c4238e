import { chanceOf } from "../scenario/chance";
import { seed } from "../scenario/parameters";
import type { EventDraft } from "../scenario/types";
import type { Row } from "./seven-years";
import { said } from "./trade-words";

const chanceOfRow = ({ person, segment }: Row, topic: string) =>
  chanceOf(seed, topic, person.case.index, segment.operation, segment.fields.bone ?? "", segment.fields.side ?? "");

/** One row in four with complications has them in the comments alone, where they must be coded before the text is dropped. */
export function toldInComment(row: Row): boolean {
  return row.segment.events.length > 0 && chanceOfRow(row, "told in comment").happens(0.28);
}

/** Free text as clerks write it: complications, names, telephone numbers, and much that matters to nobody. */
export function commentOf(row: Row): string {
  const chance = chanceOfRow(row, "comment");
  if (toldInComment(row))
    return [row.segment.events.map(sentence).join("; "), chance.happens(0.3) ? relative(row) : ""].filter((part) => part !== "").join(". ");
  if (chance.happens(0.6)) return "";
  const { surname, firstName, phone } = row.person.identity;
  return chance.pick([
    "Doing well – back to work",
    "Happy with height",
    "Films sent from other hospital",
    `${firstName} prefers morning clinics`,
    `Rang ${phone} 2x, no answer`,
    `Letter to Dr ${surname}'s school`,
    "Shoe raise 1½ cm given",
    "Knee 0–130°, full weight",
    "Physio near home 2/52",
    relative(row),
  ]);
}

const relative = ({ person: { identity } }: Row) => `Seen with mother, Mrs ${identity.surname}`;

function sentence({ eventType, handling, resolved }: EventDraft): string {
  const what = said.complication(eventType).toLowerCase();
  const then = handling ? `, ${said.treatment(handling).toLowerCase()}` : "";
  return `${what}${then}${resolved ? ", settled" : ""}`;
}
