import { endsAtConsolidation, type IndexDefinition } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { type Covariate, estimate } from "@/lib/stats";
import { type Columns, columnsOf, healedOf, withGain } from "../healing/columns";
import { atLandmark, isKnownAfter } from "../healing/landmark";
import { seed } from "../healing/median-interval";
import { clockReader } from "../healing/read";
import { said } from "../healing/said";
import { type Asked, type Compared, type Difference, detectableFor, labels, means, names, once } from "./differences";
import { namesBone, type Side } from "./sides";
import { isShown, straightLinesDifference } from "./straight-lines";

/** What a clock reads on a side. */
export async function readSide(registry: Registry, state: State, side: Side, definition: IndexDefinition): Promise<Columns> {
  const read = await clockReader(registry, state, definition, namesBone(side));
  return columnsOf(side.cases, read(side.cases));
}

type Read = readonly [a: Columns, b: Columns];
type Column = readonly number[];

/** Healing: days at equal gain first, then the index itself, which says less when gains differ. */
export async function compareClock(
  registry: Registry,
  state: State,
  sides: readonly [Side, Side],
  clock: IndexDefinition,
  asked: Asked,
): Promise<Compared> {
  const definition = atLandmark(clock, asked.landmark);
  const perLength = definition.per !== null && endsAtConsolidation(definition);
  if (asked.adjust.length > 0 && !perLength)
    throw new RangeError("compare requires no covariates for a clock that isn't healing per length, received some");
  const read: Read = [await readSide(registry, state, sides[0], definition), await readSide(registry, state, sides[1], definition)];
  const equal = perLength ? equalGain(read, sides, { ...asked, clock: definition }) : { differences: [], notes: [] };
  const plain = means(healedValues(read, definition), sides, { what: `mean ${definition.unit}`, test: asked.test });
  const notes = [...equal.notes, ...plain.notes];
  // an index beside an adjusted ratio would pass for adjusted
  if (asked.adjust.length > 0) return { differences: equal.differences, notes: once(notes) };
  const lines = equal.differences.length > 0 ? straightLines(read, sides) : [];
  const shown = [equal.differences[0], lines[0]].flatMap((one) => (one === undefined || one.lower === null ? [] : [isShown(one)]));
  const doubt = new Set(shown).size > 1 ? [said({ code: "scales-disagree" })] : [];
  return { differences: [...equal.differences, ...plain.differences, ...lines], notes: once([...doubt, ...notes]) };
}

/** A letter for each row of both sides, the first side's first. */
function lettersOf(a: Column, b: Column): readonly ("a" | "b")[] {
  return [...a.map(() => "a" as const), ...b.map(() => "b" as const)];
}

function healedValues([a, b]: Read, { per, inverse }: IndexDefinition) {
  const both = (pick: (columns: Columns) => Column) => [...pick(a).slice(0, a.measured), ...pick(b).slice(0, b.measured)];
  return {
    value: both(({ value }) => value),
    person: both(({ person }) => person),
    group: lettersOf(a.value.slice(0, a.measured), b.value.slice(0, b.measured)),
    ...(per !== null && !inverse ? { gainMm: both(({ gainMm }) => gainMm) } : {}),
  };
}

function straightLines(read: Read, sides: readonly [Side, Side]): readonly Difference[] {
  const [a, b] = read.map((columns) => healedOf(withGain(columns, { alsoDays: false })));
  const difference = a && b ? straightLinesDifference([a, b], sides) : null;
  return difference ? [difference] : [];
}

/** From the scale of logarithms. */
const ratioOf = (log: number | null) => (log === null ? null : Math.exp(log));

function equalGain(
  read: Read,
  sides: readonly [Side, Side],
  { adjust, test, clock }: Asked & { readonly clock: IndexDefinition },
): Compared {
  const [a, b] = [withGain(read[0], { alsoDays: true }), withGain(read[1], { alsoDays: true })];
  if (a.days.length === 0 || b.days.length === 0) return { differences: [], notes: [] };
  const covariates = adjust.map((field): Covariate => {
    const valuesOf = (rows: Column, place: 0 | 1) =>
      rows.map((row) => {
        const value = sides[place].cases[read[place].place[row] ?? -1]?.look(field) ?? null;
        return typeof value === "boolean" ? Number(value) : value;
      });
    const values = [...valuesOf(a.row, 0), ...valuesOf(b.row, 1)];
    return { field, values, knownLater: isKnownAfter(field, clock), inModel: field === clock.per };
  });
  const answer = estimate({
    situation: "healing-compared",
    days: [...a.days, ...b.days],
    healed: [...a.healed, ...b.healed],
    gainCm: [...a.gainCm, ...b.gainCm],
    group: lettersOf(a.days, b.days),
    patient: [...a.patient, ...b.patient],
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
