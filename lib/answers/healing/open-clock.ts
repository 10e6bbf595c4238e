import type { Where } from "@/lib/cohorts";
import type { IndexDefinition } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { clockOf } from "../measures/clocks";
import { type Head, openQuestion } from "../question/open";
import { stateAsOf } from "../question/state";
import { atLandmark, landmarkOption } from "./landmark";
import { type Readings, readingsOf } from "./readings";

/** What is asked of the days of one clock. */
export type ClockQuestion = {
  readonly measure: string;
  readonly by?: readonly string[];
  readonly where?: Where;
  readonly landmark?: number;
  readonly asOf?: number;
};

type Opened = { readonly head: Head; readonly definition: IndexDefinition; readonly readings: () => Promise<Readings> };

/**
 * Opens a question about a clock's days under a name of its own, with the readings for when nobody has asked it before.
 * @throws RangeError when the clock, the batch or the landmark isn't one
 */
export async function openClock(
  registry: Registry,
  asked: ClockQuestion,
  { name, method }: { readonly name: string; readonly method: string },
): Promise<Opened> {
  const { batch } = await stateAsOf(registry, asked.asOf);
  const definition = atLandmark(await clockOf(registry, batch, asked.measure), asked.landmark);
  const head = await openQuestion(registry, {
    ...asked,
    measure: `${name}.${definition.id}`,
    method,
    options: landmarkOption(definition),
  });
  const read = { where: asked.where ?? {}, by: asked.by ?? [] };
  return { head, definition, readings: () => readingsOf(registry, head.state, definition, read) };
}
