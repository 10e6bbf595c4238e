import type { Registry } from "@/lib/registry";
import { countPatients, cr2Regression, thresholds } from "@/lib/stats";
import { answerCache } from "../question/cache";
import type { Head } from "../question/open";
import type { Interval, Note } from "../types";
import { healedOf, type WithGain, withGain } from "./columns";
import type { ReadGroup } from "./group";
import type { GroupKey } from "./groups";
import { type ClockQuestion, openClock } from "./open-clock";
import { said } from "./said";

/** days = fixed days + days per further cm · cm, over the healed of a group: n bones of so many patients, with gains from and to, mm. */
export type GainLine = {
  readonly fixedDays: Interval;
  readonly daysPerCm: Interval;
  readonly from: number;
  readonly to: number;
  readonly n: number;
  readonly patients: number;
};
export type DaysAgainstGainGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  /** With a gain. */
  readonly healed: number;
  /** `null` where fewer than three patients healed or all gains are equal. */
  readonly line: GainLine | null;
};
export type DaysAgainstGainAnswer = Head & {
  readonly measure: string;
  readonly unit: "days";
  readonly groups: readonly DaysAgainstGainGroup[];
  readonly notes: readonly Note[];
};

const cached = answerCache<DaysAgainstGainAnswer>();

/** Days of a clock against the gain they were for: the fitted line of each group. */
export async function daysAgainstGain(registry: Registry, asked: ClockQuestion): Promise<DaysAgainstGainAnswer> {
  const method = "days = a + b·cm over the healed, CR2 by patient";
  const { head, definition, readings } = await openClock(registry, asked, { name: "days-against-gain", method });
  return cached(`${registry.folder} ${head.stamp}`, async () => ({
    ...head,
    measure: definition.id,
    unit: "days",
    groups: (await readings()).groups.map(answerGroup),
    notes: [said({ code: "shared-denominator" })],
  }));
}

function answerGroup({ key, label, cases, patients, columns }: ReadGroup): DaysAgainstGainGroup {
  const healed = healedOf(withGain(columns, { alsoDays: false }));
  return { key, label, patients, segments: cases.length, healed: healed.days.length, line: lineOf(healed) };
}

function lineOf({ days, gainCm, patient }: WithGain): GainLine | null {
  const patients = countPatients(patient);
  const [from, to] = gainCm.reduce(([least, most], cm) => [Math.min(least, cm), Math.max(most, cm)] as const, [
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ] as const);
  if (patients < thresholds.patientsForInterval || from === to) return null;
  const { coefficients } = cr2Regression({ values: days, design: gainCm.map((cm) => [cm]), patient, names: ["cm"] });
  const [fixed, slope] = coefficients;
  if (!fixed || !slope) return null;
  const ends = { from: from * 10, to: to * 10 };
  return { fixedDays: intervalOf(fixed), daysPerCm: intervalOf(slope), ...ends, n: days.length, patients };
}

function intervalOf({ estimate, se, df, lower, upper }: Interval): Interval {
  return { estimate, se, df, lower, upper };
}
