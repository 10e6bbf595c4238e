import { canonicalWhere } from "@/lib/cohorts";
import type { Registry, State } from "@/lib/registry";
import { estimate } from "@/lib/stats";
import { dataTo } from "../frames/data-to";
import { seed } from "../healing/median-interval";
import { said } from "../healing/said";
import { readMeasure } from "../measures/catalogue";
import { clockOf, clocksAsOf, isClock } from "../measures/clocks";
import { comparedId } from "../measures/scores";
import { keepQuestion } from "../question/keep";
import { splitsLookedAt } from "../question/splits";
import { type Question, stampOf } from "../question/stamp";
import { stateAsOf } from "../question/state";
import { version } from "../question/version";
import type { HealingGroup, MeasureGroup, Note } from "../types";
import { balanceOfSeveral, type SeveralBalance } from "./balance";
import { readRows } from "./by-measure";
import { readSide } from "./clock";
import { type CompareAnswer, described, groupOf, type SideAnswer, sideAnswer } from "./compare";
import { asDifference, type Difference } from "./differences";
import { type Several, type Side, severalSides } from "./sides";

export type SeveralQuestion = Several & { readonly measure: string; readonly test?: boolean; readonly asOf?: number };
export type SeveralAnswer = Omit<CompareAnswer, "sides" | "balance"> & {
  readonly sides: readonly SideAnswer[];
  /** Case mix, always first. */
  readonly balance: readonly SeveralBalance[];
  /** Over all groups at once; `null` where no p was asked for, or none can be had. */
  readonly p: number | null;
  readonly testMethod: string | null;
};

/**
 * Three groups or more: each mean against that of all others together, and one test over all.
 * @throws RangeError for fewer than three groups, and for shares, rates and classes, which are compared two at a time
 */
export async function compareSeveral(registry: Registry, { measure, ...others }: SeveralQuestion): Promise<SeveralAnswer> {
  if (new Set(others.values).size < 3)
    throw new RangeError(`compareSeveral requires at least three groups, received ${others.values.length}`);
  const state = await stateAsOf(registry, others.asOf);
  const asked: SeveralQuestion = { ...others, measure: await comparedId(registry, state, measure) };
  const sides = await severalSides(registry, state, asked);
  const question = questionOf(asked, state);
  const stamp = stampOf(question);
  await keepQuestion(registry, stamp, question);
  const { unit, definition } = described(asked.measure, await clocksAsOf(registry, state.batch));
  const groups = await Promise.all(sides.map((side) => groupOf(registry, asked, side, state)));
  return {
    measure: asked.measure,
    unit,
    definition,
    sides: sides.map(sideAnswer),
    balance: balanceOfSeveral(
      sides.map(({ cases }) => cases),
      asked.field,
    ),
    groups: groups.map((group: HealingGroup | MeasureGroup, i) => ({ ...group, label: sides[i]?.label ?? group.label })),
    ...differencesOf(await rowsOf(registry, state, asked.measure, sides), unit, asked.test ?? false),
    splitsLookedAt: await splitsLookedAt(registry, question),
    batch: state.batch,
    state,
    stamp,
    dataTo: await dataTo(registry, state),
  };
}

type Row = { readonly value: number; readonly person: number; readonly group: string; readonly gainMm: number | null };

async function rowsOf(registry: Registry, state: State, measure: string, sides: readonly Side[]): Promise<readonly Row[]> {
  if (isClock(measure)) {
    const clock = await clockOf(registry, state.batch, measure);
    const isIndex = clock.per !== null && !clock.inverse;
    const read = await Promise.all(sides.map((side) => readSide(registry, state, side, clock)));
    return read.flatMap(({ measured, value, person, gainMm }, i) =>
      value.slice(0, measured).map((own, row) => {
        const gain = gainMm[row] ?? Number.NaN;
        return {
          value: own,
          group: sides[i]?.label ?? "",
          person: person[row] ?? -1,
          gainMm: !isIndex || Number.isNaN(gain) ? null : gain,
        };
      }),
    );
  }
  const definition = readMeasure(measure);
  if (definition?.kind !== "number")
    throw new RangeError(
      "compareSeveral requires a measure that has a mean, received one of shares, rates or classes: compare two at a time",
    );
  const read = await Promise.all(sides.map((side) => readRows(registry, state, definition, side)));
  return read.flatMap((rows, i) => rows.map(({ value, person }) => ({ value, person, group: sides[i]?.label ?? "", gainMm: null })));
}

type Compared = Pick<SeveralAnswer, "differences" | "notes" | "p" | "testMethod">;

function differencesOf(rows: readonly Row[], unit: string, test: boolean): Compared {
  if (new Set(rows.map(({ group }) => group)).size < 3) return { differences: [], notes: [], p: null, testMethod: null };
  const answer = estimate({
    situation: "several-means",
    values: rows.map(({ value }) => value),
    group: rows.map(({ group }) => group),
    patient: rows.map(({ person }) => person),
    ...(rows.every(({ gainMm }) => gainMm === null) ? {} : { gains: rows.map(({ gainMm }) => gainMm ?? 0) }),
    seed,
    test,
  });
  const differences = answer.records.againstOthers.map(
    ({ label, difference }): Difference => asDifference({ a: String(label), b: "all others" }, `mean ${unit}`, difference),
  );
  const notes: readonly Note[] = [...answer.notes, ...(answer.test?.notes ?? [])].map(said);
  return { differences, notes, p: answer.test?.p ?? null, testMethod: answer.test?.method ?? null };
}

function questionOf({ measure, field, values, where, test = false }: SeveralQuestion, state: State): Question {
  const cohort: unknown = JSON.parse(canonicalWhere(where));
  return { cohort, measure, by: [field], method: "compare", options: { values: values.join(","), test }, seed, version, state };
}
