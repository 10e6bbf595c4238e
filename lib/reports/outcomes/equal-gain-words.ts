import { type DaysAgainstGainGroup, type Difference, isShown } from "@/lib/answers";
import { decimals, shownInterval, shownText, shownUnit } from "@/lib/charts";

type Naming = (value: string) => string;

const noUnit = { name: "", perRecord: 1, digits: 2, valueDigits: 2 };

/**
 * How two groups differ at equal gain, by the ratio and on straight lines. An interval that holds *no difference* is said to show none, and
 * never that there is none; where only one of the two shows one, that is no difference shown either.
 */
export function ratioText(ratio: Difference, naming: Naming, lines: Difference | null = null): string {
  const { a, b, estimate, lower, upper } = ratio;
  const [first, second] = [naming(a), naming(b)];
  if (estimate === null) return `At equal gain the days of ${first} and ${second} can’t be compared: too few bones or patients.`;
  const interval = shownInterval({ lower, upper }, noUnit);
  const times = `${decimals(estimate, 2)} times the days of ${second} (${interval ?? "no interval"})`;
  const start = `At equal gain, ${first} took ${times}`;
  if (lower === null || upper === null) return `${start}; too few patients to say whether they differ.`;
  if (lower <= 1 && upper >= 1) return `No difference is shown at equal gain: ${first} took ${times}.`;
  if (lines && !isShown(lines))
    return `No difference is shown at equal gain: on straight lines ${first} less ${second} is ${linesText(lines)}. As a ratio it is ${decimals(estimate, 2)} (${interval ?? "no interval"}); the two disagree where gains of the groups hardly overlap.`;
  return `${start}: ${estimate < 1 ? "fewer" : "more"} days for the same gain.`;
}

function linesText(lines: Difference): string {
  const days = shownUnit("days");
  return `${shownText(lines.estimate ?? 0, days)} days (${shownInterval(lines, days) ?? "no interval"})`;
}

/** What an index alone would have said of the two groups. */
export function indexDifferenceText({ a, b, what, estimate, lower, upper }: Difference, naming: Naming): string | null {
  if (estimate === null) return null;
  const unit = shownUnit(what.replace(/^mean /, ""));
  const interval = shownInterval({ lower, upper }, unit) ?? "no interval";
  return `The index by itself, ${naming(a)} less ${naming(b)}: ${shownText(estimate, unit)} ${unit.name} (${interval}).`;
}

const mostNamed = 3;
/** As for a mean of segments: below this the interval says too little for a sentence. */
const leastDf = 4;

/** The part of the days that doesn't depend on gain, and what each further centimetre takes. */
export function fixedPartText(groups: readonly DaysAgainstGainGroup[]): string | null {
  const [days, perCm] = [shownUnit("days"), shownUnit("days/cm")];
  const known = groups.flatMap(({ label, line }) => (line && (line.daysPerCm.df ?? 0) >= leastDf ? [{ label, line }] : []));
  if (known.length === 0 || known.length > mostNamed) return null;
  const parts = known.map(({ label, line: { fixedDays, daysPerCm } }) => {
    const fixed = `${decimals(fixedDays.estimate ?? 0, 0)} days (${shownInterval(fixedDays, { ...days, digits: 0 }) ?? "no interval"}) don’t depend on gain`;
    const further = `each further cm took ${decimals(daysPerCm.estimate ?? 0, 1)} (${shownInterval(daysPerCm, perCm) ?? "no interval"})`;
    return `${groups.length === 1 ? "" : `${label} `}${fixed}, and ${further}`;
  });
  return `Of the healed: ${parts.join("; ")}.`;
}
