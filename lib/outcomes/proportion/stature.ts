import type { SegmentCase } from "../case";
import { measuredAs, type NumberReading, notMeasured } from "../gain/gain";
import { type GrowthScore, type GrowthTable, statureScore } from "../norms/growth";
import { legsOf } from "./legs";
import { bodyMeasureAt, type Moment, type PersonCase } from "./person-case";
import { isLengthenedOnBothSides } from "./proportion";

/** Mean gain of the two sides, femur and tibia added, mm: never the sum of the sides. Bones of the arm have no part in it. */
export function statureGainMm(person: PersonCase): NumberReading {
  const legs = legsOf(person);
  if (legs.length === 0)
    return notMeasured(person.segments.every(({ procedure }) => procedure === "transport") ? "not-lengthening" : "bone-apart");
  if (!isLengthenedOnBothSides(person)) return notMeasured("one-side-only");
  if (legs.some((segment) => segment.gainMm === null)) return notMeasured("no-gain");
  const sum = (side: SegmentCase["side"]) => legs.filter((one) => one.side === side).reduce((total, one) => total + (one.gainMm ?? 0), 0);
  return measuredAs((sum("left") + sum("right")) / 2);
}

/** Standing height measured after less before, mm: beside the gain of the bones it holds posture, contracture, time of day and growth. */
export function measuredStatureGainMm(person: PersonCase): NumberReading {
  const before = statureMm(person, "before");
  const after = statureMm(person, "after");
  return before === null || after === null ? notMeasured("not-recorded") : measuredAs(after - before);
}

export function statureMm(person: PersonCase, moment: Moment): number | null {
  return bodyMeasureAt(person, moment, (one) => one.statureMm !== null)?.statureMm ?? null;
}

/** z or centile of stature at a moment against a growth table. Age after is age at surgery plus the days between. */
export function statureGrowth(person: PersonCase, moment: Moment, table: GrowthTable): GrowthScore | null {
  const body = bodyMeasureAt(person, moment, (one) => one.statureMm !== null);
  const sex = person.sex;
  if (!body || body.statureMm === null || person.ageAtSurgeryYears === null || (sex !== "female" && sex !== "male")) return null;
  const first = Math.min(...person.segments.map((segment) => segment.surgeryDay));
  const years = moment === "before" ? 0 : Math.max(0, (body.bodyDay - first) / 365.25);
  return statureScore({ statureMm: body.statureMm, ageMonths: (person.ageAtSurgeryYears + years) * 12, sex, table });
}
