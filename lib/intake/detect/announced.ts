/** What a header, or the words of a cell, announce. */
export type Announced = {
  readonly number: boolean;
  readonly name: boolean;
  readonly date: boolean;
  readonly postcode: boolean;
  readonly phone: boolean;
  readonly ip: boolean;
  /** A serial, lot or volume: a check digit that happens to hold there proves nothing. */
  readonly device: boolean;
};

export const nothingAnnounced: Announced = {
  number: false,
  name: false,
  date: false,
  postcode: false,
  phone: false,
  ip: false,
  device: false,
};

const words = {
  number:
    /(?:^| )(?:mrn|nhs(?: no| num| number)?|chi|hosp(?:ital)? ?(?:no|num|number|id)|pas(?: no| number| id)?|unit (?:no|number)|patient ?(?:id|no|num|number)|pid|case ?notes?(?: no| number)?|case (?:no|number|id)|(?:medical )?record (?:no|num|number|id)|accession|chart (?:no|number)|ssn|social security(?: no| number)?|sin|medicare|ihi|phn|pps|ppsn|kvnr|nir|aadhaar|bsn|insurance (?:no|number)|national (?:id|no|number)|study id|subject id)(?= |$)/,
  name: /(?:^| )(?:nom|nombre|naam|nachname|vorname|surname|forename|given name|family name|first name|last name|name|initials|next of kin|gp|consultant|surgeon|operator)(?= |$)/,
  date: /(?:^| )(?:dob|d o b|birth|born|date|died|death)(?= |$)/,
  postcode: /(?:^| )(?:post ?codes?|zip(?: code)?|address|addr|lives|living|resides|home|plz)(?= |$)/,
  phone: /(?:^| )(?:tel|telephone|phone|mobile|mob|call|called|ring|rang|contact|fax|telefon)(?= |$)/,
  ip: /(?:^| )ip(?: address)?(?= |$)/,
  device: /(?:^| )(?:serial|volume|vol|lot|udi|batch|ref)(?= |$)/,
} as const satisfies Record<keyof Announced, RegExp>;

// "device name", "name of nail": what is named is a thing
const thingNamed =
  /(?:^| )(?:device|nail|implant|drug|hospital|unit|field|variable|column|sheet|file|frame|bone|segment|score|type)(?= |$)/;

/**
 * What a folded text announces: whole words only.
 * @example announcedBy("patient id").number // => true
 */
export function announcedBy(folded: string): Announced {
  const says = (kind: keyof Announced) => words[kind].test(folded);
  return {
    number: says("number"),
    name: says("name") && !thingNamed.test(folded),
    date: says("date"),
    postcode: says("postcode"),
    phone: says("phone"),
    ip: says("ip"),
    device: says("device"),
  };
}

/** Either announces it. */
export function eitherAnnounced(a: Announced, b: Announced): Announced {
  const kinds = Object.keys(nothingAnnounced) as (keyof Announced)[];
  return Object.fromEntries(kinds.map((kind) => [kind, a[kind] || b[kind]])) as Announced;
}
