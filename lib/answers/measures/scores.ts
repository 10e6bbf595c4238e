import { wordsOfCode } from "@/lib/codebook";
import type { MeasureOptions, PersonMeasure, SegmentMeasure } from "@/lib/outcomes";
import type { Registry, State } from "@/lib/registry";
import { columnOf, valueAt } from "../frames/read";
import type { Group } from "../healing/groups";
import { NotCompared } from "./not-compared";

export type AskedGroup = { readonly group: Group; readonly options: MeasureOptions };

const bare: ReadonlySet<string> = new Set(["score-change", "score-responders"]);
const named = /^(score-change|score-responders)\.([a-z][a-z0-9-]{1,31})$/;

/** The score that an id names, as `score-change.knee-function` does; `null` of any other id. */
export function scoreOf(id: string): string | null {
  return named.exec(id)?.[2] ?? null;
}

/** The measure of one score, from that of scores whichever. */
export function ofScore<Measure extends SegmentMeasure | PersonMeasure>(measure: Measure, code: string): Measure {
  return { ...measure, id: `${measure.id}.${code}`, title: `${measure.title} (${wordsOfCode(code)})` };
}

/**
 * How a measure is read: of scores once for each score named, asked for or held; of anything else once.
 * @throws NotCompared when a score is named that the unit's list doesn't have
 */
export async function optionsOf(registry: Registry, state: State, id: string, options: MeasureOptions): Promise<readonly MeasureOptions[]> {
  const name = scoreOf(id);
  if (name === null && !bare.has(id)) return [options];
  const { scores } = await registry.settings(state.batch);
  if (name !== null && !scores.some(({ code }) => code === name))
    throw new NotCompared(
      "score",
      `measure requires a score of the unit's list (${listed(scores.map(({ code }) => code))}), received another`,
    );
  const one = name ?? options.scoreCode;
  return (one === null ? await codesHeld(registry, state) : [one]).map((code): MeasureOptions => {
    const rule = scores.find((score) => score.code === code);
    return {
      ...options,
      scoreCode: code,
      scoreBetter: rule?.direction ?? null,
      scoreMinimalDifference: rule?.minimalDifference ?? null,
    };
  });
}

/** A measure of scores without a code answers each code held, as a field `score` of the group's key; every other measure stays as it is. */
export async function withScores(
  registry: Registry,
  state: State,
  { id }: { readonly id: string },
  groups: readonly Group[],
  options: MeasureOptions,
): Promise<readonly AskedGroup[]> {
  const all = await optionsOf(registry, state, id, options);
  if (!bare.has(id) || options.scoreCode !== null) return groups.flatMap((group) => all.map((own) => ({ group, options: own })));
  return groups.flatMap((group) =>
    all.map((own) => {
      const code = String(own.scoreCode);
      return { group: { ...group, key: { ...group.key, score: code }, label: `${group.label}, ${code}` }, options: own };
    }),
  );
}

/**
 * The id under which a measure is compared: points of unlike scores have no mean, so that a score is named, or is the only one held.
 * @throws NotCompared when several scores are held, or none
 */
export async function comparedId(registry: Registry, state: State, id: string): Promise<string> {
  if (!bare.has(id)) return id;
  const [code, ...more] = await codesHeld(registry, state);
  if (code !== undefined && more.length === 0) return `${id}.${code}`;
  const held = code === undefined ? "none is held" : `${listed([code, ...more])} are held`;
  throw new NotCompared("score", `compare requires one score, as ${id}.CODE: ${held}`);
}

const listed = (codes: readonly string[]) => codes.join(", ") || "none";

async function codesHeld(registry: Registry, state: State): Promise<readonly string[]> {
  const frame = await registry.frameAsOf(state, "score", ["scoreCode"]);
  const codes = new Set<string>();
  for (let row = 0; row < frame.length; row++) codes.add(String(valueAt(columnOf(frame, "scoreCode"), row)));
  return [...codes].sort();
}
