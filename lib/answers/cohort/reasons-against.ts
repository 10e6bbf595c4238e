import { reasons as orderOfReasons } from "@/lib/codebook";
import {
  complicationMeasures,
  isLeg,
  type MeasureOptions,
  type PersonMeasure,
  readIndex,
  type SegmentMeasure,
  usualOptions,
} from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { countsOperations } from "../complications/counted";
import type { Case } from "../frames/cases";
import { personsOf } from "../frames/persons";
import { readMeasure } from "../measures/catalogue";
import { clockOf, isClock } from "../measures/clocks";
import { optionsOf } from "../measures/scores";

type Against = (one: Case) => string | null;

/** The reasons for which a measure leaves cases out, in the order of ids.md §7, each with the cases that it leaves out. */
export async function reasonsAgainst(
  registry: Registry,
  state: State,
  measure: string,
  cases: readonly Case[],
  boneNamed: boolean,
): Promise<readonly (readonly [reason: string, out: ReadonlySet<Case>])[]> {
  const against = await againstOf(registry, state, measure, cases, boneNamed);
  const out = new Map<string, Set<Case>>();
  for (const one of cases) {
    const reason = against(one);
    if (reason === null) continue;
    const held = out.get(reason);
    if (held) held.add(one);
    else out.set(reason, new Set([one]));
  }
  const order: readonly string[] = orderOfReasons;
  return [...out].sort(([a], [b]) => order.indexOf(a) - order.indexOf(b));
}

async function againstOf(registry: Registry, state: State, measure: string, cases: readonly Case[], boneNamed: boolean): Promise<Against> {
  if (isClock(measure)) {
    const clock = await clockOf(registry, state.batch, measure);
    return ({ segment }) => {
      const reading = readIndex(segment, clock, { boneNamed });
      return reading.reading === "excluded" ? reading.because : null;
    };
  }
  if (complicationMeasures.some(({ id }) => id === measure)) return againstCounting(measure);
  const definition = readMeasure(measure);
  if (!definition) throw new RangeError(`cohortFlow requires an id of the list of measures, received ${measure}`);
  return definition.of === "segment"
    ? againstSegment(definition, boneNamed)
    : againstPerson(definition, await personsOf(registry, state, cases), await optionsOf(registry, state, measure, usualOptions));
}

function againstCounting(measure: string): Against {
  const serious = countsOperations(measure);
  return ({ segment: { procedure, eventsLookedFor } }) => {
    if (procedure === "transport") return "not-lengthening";
    return eventsLookedFor === "fully" || (serious && eventsLookedFor === "serious-only") ? null : "not-looked-for";
  };
}

function againstSegment(definition: SegmentMeasure, boneNamed: boolean): Against {
  return ({ segment }) => {
    const apart = segment.procedure !== "transport" && !boneNamed && !isLeg(segment.bone);
    if (apart) return "bone-apart";
    const reading = definition.read(segment, usualOptions);
    return reading.measured ? null : reading.because;
  };
}

/** Of several scores a person is in when one of them was measured. */
function againstPerson(
  definition: PersonMeasure,
  persons: Awaited<ReturnType<typeof personsOf>>,
  ways: readonly MeasureOptions[],
): Against {
  return ({ segment }) => {
    const person = persons.get(segment.person);
    const readings = person ? ways.map((options) => definition.read(person, options)) : [];
    const reading = readings.find(({ measured }) => measured) ?? readings[0];
    if (!reading) return "not-recorded";
    return reading.measured ? null : reading.because;
  };
}
