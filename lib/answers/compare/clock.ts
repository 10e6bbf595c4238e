import { endsAtConsolidation, type IndexDefinition, readIndex } from "@/lib/outcomes";
import { type Covariate, estimate } from "@/lib/stats";
import type { Case } from "../frames/cases";
import { atLandmark, isKnownAfter } from "../healing/landmark";
import { seed } from "../healing/median-interval";
import { said } from "../healing/said";
import { type Asked, type Compared, type Difference, detectableFor, hasBoth, labels, means, names, once } from "./differences";
import { namesBone, type Side } from "./sides";
import { isShown, straightLinesDifference } from "./straight-lines";

type Row = {
  readonly value: number;
  readonly days: number;
  readonly gainMm: number | null;
  readonly healed: boolean;
  readonly one: Case;
  readonly group: "a" | "b";
};

export function readSide<Group extends string>(
  side: Side,
  definition: IndexDefinition,
  group: Group,
): (Omit<Row, "group"> & { readonly group: Group })[] {
  return side.cases.flatMap((one) => {
    const reading = readIndex(one.segment, definition, { boneNamed: namesBone(side) });
    if (reading.reading !== "measured" && reading.reading !== "censored") return [];
    const { value, days, gainMm } = reading;
    return [{ value, days, gainMm, healed: reading.reading === "measured", one, group }];
  });
}

/** Healing: days at equal gain first, then the index itself, which says less when gains differ. */
export function compareClock(sides: readonly [Side, Side], clock: IndexDefinition, asked: Asked): Compared {
  const definition = atLandmark(clock, asked.landmark);
  const perLength = definition.per !== null && endsAtConsolidation(definition);
  if (asked.adjust.length > 0 && !perLength)
    throw new RangeError("compare requires no covariates for a clock that isn't healing per length, received some");
  const rows = [...readSide(sides[0], definition, "a"), ...readSide(sides[1], definition, "b")];
  const equal = perLength ? equalGain(rows, sides, { ...asked, clock: definition }) : { differences: [], notes: [] };
  const plain = means(
    rows
      .filter((row) => row.healed)
      .map((row) => ({ value: row.value, person: row.one.segment.person, group: row.group, gainMm: row.gainMm })),
    sides,
    { what: `mean ${definition.unit}`, test: asked.test, isIndex: definition.per !== null && !definition.inverse },
  );
  const notes = [...equal.notes, ...plain.notes];
  // an index beside an adjusted ratio would pass for adjusted
  if (asked.adjust.length > 0) return { differences: equal.differences, notes: once(notes) };
  const lines = equal.differences.length > 0 ? straightLines(rows, sides) : [];
  const shown = [equal.differences[0], lines[0]].flatMap((one) => (one === undefined || one.lower === null ? [] : [isShown(one)]));
  const doubt = new Set(shown).size > 1 ? [said({ code: "scales-disagree" })] : [];
  return { differences: [...equal.differences, ...plain.differences, ...lines], notes: once([...doubt, ...notes]) };
}

function straightLines(rows: readonly Row[], sides: readonly [Side, Side]): readonly Difference[] {
  const difference = straightLinesDifference(
    rows.map((row) => ({ ...row, person: row.one.segment.person })),
    sides,
  );
  return difference ? [difference] : [];
}

/** From the scale of logarithms. */
const ratioOf = (log: number | null) => (log === null ? null : Math.exp(log));

function equalGain(
  all: readonly Row[],
  sides: readonly [Side, Side],
  { adjust, test, clock }: Asked & { readonly clock: IndexDefinition },
): Compared {
  const rows = all.filter((row) => (row.gainMm ?? 0) > 0 && row.days > 0);
  if (!hasBoth(rows)) return { differences: [], notes: [] };
  const covariates = adjust.map(
    (field): Covariate => ({
      field,
      values: rows.map(({ one }) => {
        const value = one.look(field);
        return typeof value === "boolean" ? Number(value) : value;
      }),
      knownLater: isKnownAfter(field, clock),
    }),
  );
  const answer = estimate({
    situation: "healing-compared",
    days: rows.map((row) => row.days),
    healed: rows.map((row) => Number(row.healed)),
    gainCm: rows.map((row) => (row.gainMm as number) / 10),
    group: rows.map((row) => row.group),
    patient: rows.map((row) => row.one.segment.person),
    between: labels,
    covariates,
    seed,
    test,
  });
  const ratio = answer.records.equalGain?.ratio ?? answer.records.timeModel?.ratio ?? null;
  const coefficient = answer.records.equalGain?.model.coefficients[2];
  const difference: Difference = {
    ...names(sides),
    kind: "ratio",
    what: "days at equal gain",
    estimate: ratio?.estimate ?? null,
    se: coefficient?.se ?? null,
    df: coefficient?.df ?? null,
    lower: ratio?.lower ?? null,
    upper: ratio?.upper ?? null,
    p: answer.test?.p ?? null,
    method: ratio?.method ?? "not estimable",
    adjustedFor: ratio ? adjust : [],
    detectable: ratioOf(detectableFor({ se: coefficient?.se ?? null, df: coefficient?.df ?? null })),
  };
  return { differences: [difference], notes: [...answer.notes, ...(answer.test?.notes ?? [])].map(said) };
}
