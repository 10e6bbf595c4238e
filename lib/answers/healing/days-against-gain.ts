import type { Registry } from "@/lib/registry";
import { cr2Regression } from "@/lib/stats";
import { answerCache } from "../question/cache";
import type { Head } from "../question/open";
import type { Interval, Note } from "../types";
import type { GroupKey } from "./groups";
import { type ClockQuestion, openClock } from "./open-clock";
import type { DayGroup, DayRow } from "./readings";
import { said } from "./said";

/** days = fixed days + days per further cm · cm, over the healed of a group. */
export type GainLine = { readonly fixedDays: Interval; readonly daysPerCm: Interval; readonly from: number; readonly to: number };
export type DaysAgainstGainGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  readonly healed: number;
  readonly points: readonly {
    readonly segment: number;
    readonly person: number;
    readonly gainMm: number;
    readonly days: number;
    readonly healed: boolean;
  }[];
  /** `null` where fewer than three patients healed or all gains are equal. */
  readonly line: GainLine | null;
};
export type DaysAgainstGainAnswer = Head & {
  readonly measure: string;
  readonly unit: "days";
  readonly groups: readonly DaysAgainstGainGroup[];
  readonly notes: readonly Note[];
};

const cached = answerCache<DaysAgainstGainAnswer>(({ groups }) => groups.reduce((sum, { points }) => sum + points.length, 0));

/** Days of a clock against the gain they were for: the points, and the fitted line of each group. */
export async function daysAgainstGain(registry: Registry, asked: ClockQuestion): Promise<DaysAgainstGainAnswer> {
  const method = "days = a + b·cm over the healed, CR2 by patient";
  const { head, definition, groups } = await openClock(registry, asked, { name: "days-against-gain", method });
  return cached(`${registry.folder} ${head.stamp}`, async () => ({
    ...head,
    measure: definition.id,
    unit: "days",
    groups: (await groups()).map(answerGroup),
    notes: [said({ code: "shared-denominator" })],
  }));
}

function answerGroup({ key, label, cases, rows }: DayGroup): DaysAgainstGainGroup {
  const points = rows.filter(hasGain);
  return {
    key,
    label,
    patients: new Set(cases.map(({ segment }) => segment.person)).size,
    segments: cases.length,
    healed: points.filter(({ healed }) => healed).length,
    points: points.map(({ segment, person, gainMm, days, healed }) => ({ segment, person, gainMm, days, healed })),
    line: lineOf(points.filter(({ healed }) => healed)),
  };
}

type Gained = DayRow & { readonly gainMm: number };

function hasGain(row: DayRow): row is Gained {
  return row.gainMm !== null && row.gainMm > 0;
}

function lineOf(rows: readonly Gained[]): GainLine | null {
  const gains = rows.map(({ gainMm }) => gainMm / 10);
  if (new Set(rows.map(({ person }) => person)).size < 3 || new Set(gains).size < 2) return null;
  const { coefficients } = cr2Regression({
    values: rows.map(({ days }) => days),
    design: gains.map((cm) => [cm]),
    patient: rows.map(({ person }) => person),
    names: ["cm"],
  });
  const [fixed, slope] = coefficients;
  if (!fixed || !slope) return null;
  return { fixedDays: intervalOf(fixed), daysPerCm: intervalOf(slope), from: Math.min(...gains) * 10, to: Math.max(...gains) * 10 };
}

function intervalOf({ estimate, se, df, lower, upper }: Interval): Interval {
  return { estimate, se, df, lower, upper };
}
