import { courseOf } from "@/lib/outcomes";
import type { Case } from "../frames/cases";
import { middle } from "../healing/group";

/** Where the implants of a group are, and when each was last seen on film. */
export type Implants = {
  /** Segments with a day of removal, and those without one. */
  readonly out: number;
  readonly notOut: number;
  /** Days from surgery to the last film held, of those not out. */
  readonly lastFilm: { readonly n: number; readonly least: number; readonly median: number; readonly most: number } | null;
  /** Of those not out, segments without any film held. */
  readonly noFilm: number;
};

export function implantsOf(cases: readonly Case[]): Implants {
  const segments = cases.map(({ segment }) => segment);
  const within = segments.filter(({ implantRemovalDay }) => implantRemovalDay === null);
  const days = within
    .flatMap((segment) => {
      const { lastFilmDay } = courseOf(segment);
      return lastFilmDay === null ? [] : [lastFilmDay - segment.surgeryDay];
    })
    .sort((a, b) => a - b);
  const [median, least, most] = [middle(days), days[0], days.at(-1)];
  const none = median === null || least === undefined || most === undefined;
  return {
    out: segments.length - within.length,
    notOut: within.length,
    lastFilm: none ? null : { n: days.length, least, median, most },
    noFilm: within.length - days.length,
  };
}
