import { type Prepared, prepare, type Sheet } from "@/lib/intake";
import type { Said } from "../_talk/messages";
import type { View } from "../_talk/view";
import { besideHeld } from "./beside";
import { doorOf } from "./door";
import { heldRows } from "./held";
import type { Session, Work } from "./session";
import { viewOf } from "./view";

/** Prepares the files of the session by what the person said, and answers with what the page shows. */
export async function prepareFiles(session: Session, { mapping, rowAnswers, coded }: Said, work: Work): Promise<View> {
  const { units, scores, auditYearStartsIn, yearOnly } = await doorOf(session, work.signal);
  const ring = session.key?.ring ?? null;
  const held = ring ? await heldRows(session, work) : null;
  const beside = ring ? await besideHeld(session, work) : { joins: [], corrections: [] };
  const prepared = await prepare({
    sheets: sheetsOf(session),
    mapping,
    ring,
    unit: units[0] ?? "unit-1",
    units,
    scores,
    auditYearStartsIn,
    yearOnly,
    today: today(),
    held,
    ...beside,
    eventsCoded: coded,
    rowAnswers,
    signal: work.signal,
    onProgress: (progress) => {
      work.pace(progress);
      // a stop is heard between any two pieces of work, whether or not they look for it
      work.signal.throwIfAborted();
    },
  });
  work.signal.throwIfAborted();
  session.prepared = prepared;
  return viewOf(session, prepared);
}

function sheetsOf({ files }: Session): readonly Sheet[] {
  return [...files.values()].flatMap(({ sheets }) => sheets);
}

/** By the clock where the person sits. */
function today() {
  const now = new Date();
  return { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() };
}

export function preparedOf({ prepared }: Session): Prepared {
  if (!prepared) throw new RangeError("preparedOf requires prepared files, received none");
  return prepared;
}
