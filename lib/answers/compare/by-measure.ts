import { complicationMeasures, isLeg, type PersonMeasure, type SegmentMeasure, schemeOf, usualOptions } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import type { Covariate } from "@/lib/stats";
import { worstPlaces } from "../complications/classes";
import { type CountedSegment, countEvents, countsOperations } from "../complications/counted";
import { eventsOf } from "../complications/events";
import { followedOf } from "../complications/incidence";
import { operationsOf } from "../complications/operations";
import { rateRows, shareRows } from "../complications/rows";
import { personsOf } from "../frames/persons";
import { readMeasure } from "../measures/catalogue";
import { clockOf, isClock } from "../measures/clocks";
import { optionsOf } from "../measures/scores";
import { isKnownLater } from "./balance";
import { compareClock } from "./clock";
import { type Asked, type Compared, means } from "./differences";
import { classes, firstEvents, rates, shares } from "./differences-of-counts";
import { namesBone, type Side } from "./sides";

type Measured = { readonly measure: string; readonly scheme?: string; readonly withoutPinSites?: boolean };
/** What a measure gets when two sides are compared. */
export async function differencesOf(
  registry: Registry,
  state: State,
  asked: Measured,
  sides: readonly [Side, Side],
  how: Asked,
): Promise<Compared> {
  if (isClock(asked.measure)) return compareClock(registry, state, sides, await clockOf(registry, state.batch, asked.measure), how);
  const complication = complicationMeasures.find((one) => one.id === asked.measure);
  if (complication) return compareComplications(registry, state, complication, asked, sides, how);
  const definition = readMeasure(asked.measure);
  if (!definition) throw new RangeError(`compare requires an id of the list of measures, received ${asked.measure}`);
  return compareRead(registry, state, definition, sides, how);
}

type Definition = (typeof complicationMeasures)[number];

/** Of a rate of operations only the operations are events. */
function eventsOver(id: Definition["id"], segments: readonly CountedSegment[]): readonly CountedSegment[] {
  return id === "operations-per-segment" ? operationsOf(segments) : segments;
}

async function compareComplications(
  registry: Registry,
  state: State,
  definition: Definition,
  asked: Measured,
  sides: readonly [Side, Side],
  how: Asked,
): Promise<Compared> {
  const events = await eventsOf(registry, state);
  const counting = {
    scheme: schemeOf(asked.scheme ?? "severity"),
    endRule: "healed-and-bearing",
    withoutPinSites: asked.withoutPinSites ?? false,
    operationsOnly: countsOperations(definition.id),
  } as const;
  const counted = sides.map(
    ({ cases }) =>
      countEvents(
        cases.filter(({ segment }) => segment.procedure !== "transport"),
        events,
        counting,
      ).segments,
  );
  if (definition.kind === "rate") {
    const rows = counted.flatMap((segments, i) =>
      rateRows(definition, eventsOver(definition.id, segments)).map((row) => ({ ...row, group: letter(i) })),
    );
    return rates(rows, sides, how, covariatesOf(rows, sides, how));
  }
  if (how.adjust.length > 0 && definition.kind !== "share")
    throw new RangeError("compare requires no covariates for classes and for cumulative incidence, received some");
  if (definition.kind === "classes") {
    const { scheme } = counting;
    const rows = counted.flatMap((segments, i) => worstPlaces(segments, scheme).map((row) => ({ ...row, group: letter(i) })));
    return classes(rows, scheme.classes.length + 1, sides, how);
  }
  if (definition.kind === "curve") {
    const operationsOnly = definition.id === "complication-return-to-theatre";
    const rows = counted.flatMap((segments, i) => followedOf(segments, { operationsOnly }).map((row) => ({ ...row, group: letter(i) })));
    return firstEvents(rows, sides, how);
  }
  const rows = counted.flatMap((segments, i) => shareRows(definition, segments).map((row) => ({ ...row, group: letter(i) })));
  return shares(rows, sides, how, covariatesOf(rows, sides, how));
}

async function compareRead(
  registry: Registry,
  state: State,
  definition: SegmentMeasure | PersonMeasure,
  sides: readonly [Side, Side],
  how: Asked,
): Promise<Compared> {
  const rows = (
    await Promise.all(
      sides.map(async (side, i) => (await readRows(registry, state, definition, side)).map((row) => ({ ...row, group: letter(i) }))),
    )
  ).flat();
  if (definition.kind === "share") return shares(rows, sides, how, covariatesOf(rows, sides, how));
  if (how.adjust.length > 0)
    throw new RangeError("compare requires no covariates for a measure that is neither healing nor a share nor a rate, received some");
  const columns = {
    value: rows.map(({ value }) => value),
    person: rows.map(({ person }) => person),
    group: rows.map(({ group }) => group),
  };
  return means(columns, sides, { what: `mean ${definition.unit}`, test: how.test });
}

type ReadRow = { readonly value: number; readonly person: number; readonly segment: number | null };

/** What a measure of numbers or shares reads on a side. Bones that stand apart are no part of it, as in the measure itself. */
export async function readRows(
  registry: Registry,
  state: State,
  definition: SegmentMeasure | PersonMeasure,
  side: Side,
): Promise<readonly ReadRow[]> {
  const { toleranceMm } = await registry.settings(state.batch);
  const [options] = await optionsOf(registry, state, definition.id, { ...usualOptions, toleranceMm });
  if (!options) return [];
  const { cases } = side;
  const read =
    definition.of === "segment"
      ? cases
          .filter(({ segment: { bone } }) => namesBone(side) || isLeg(bone))
          .map(({ segment }) => ({ reading: definition.read(segment, options), person: segment.person, segment: segment.segment }))
      : [...(await personsOf(registry, state, cases)).values()].map((person) => ({
          reading: definition.read(person, options),
          person: person.person,
          segment: null,
        }));
  return read.flatMap(({ reading, person, segment }) => (reading.measured ? [{ value: reading.value, person, segment }] : []));
}

function letter(i: number): "a" | "b" {
  return i === 0 ? "a" : "b";
}

type Rowed = { readonly person: number; readonly segment: number | null };

/** Covariates of rows: of the segment, or of the person's first segment. */
function covariatesOf(rows: readonly Rowed[], sides: readonly [Side, Side], { adjust }: Asked): readonly Covariate[] {
  const cases = sides.flatMap((side) => side.cases);
  const bySegment = new Map(cases.map((one) => [one.segment.segment, one]));
  const byPerson = new Map([...cases].reverse().map((one) => [one.segment.person, one]));
  return adjust.map((field) => ({
    field,
    values: rows.map(({ person, segment }) => {
      const value = (segment === null ? byPerson.get(person) : bySegment.get(segment))?.look(field) ?? null;
      return typeof value === "boolean" ? Number(value) : value;
    }),
    knownLater: isKnownLater(field),
  }));
}
