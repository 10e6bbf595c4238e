import type { Where } from "@/lib/cohorts";
import { definitionSentence, indexDefinition, type Rescue } from "@/lib/outcomes";
import type { Registry } from "@/lib/registry";
import { answerCache } from "../question/cache";
import { type Head, openQuestion } from "../question/open";
import type { Note } from "../types";
import { type BetweenFilms, betweenFilms } from "./between-films";
import type { HealingCurvePoint } from "./curve-point";
import { curveRows, type OnCurve } from "./curve-rows";
import { type CurveTest, curveTest } from "./curve-test";
import { middle } from "./group";
import { fieldsOfSplit, type GroupKey } from "./groups";
import { withEnded, withoutEnded } from "./healed-share";
import { atLandmark, landmarkOption, splitNotes } from "./landmark";
import { seed } from "./median-interval";
import { type DayGroup, dayGroups } from "./readings";
import { said } from "./said";

export type CurveGroup = {
  readonly key: GroupKey;
  readonly label: string;
  readonly patients: number;
  readonly segments: number;
  /** Segments on the curve: healed + censored + ended. `segments` = n + Σ excluded. */
  readonly n: number;
  readonly healed: number;
  /** Of the healed, those that a rescue came before. */
  readonly rescued: number;
  readonly censored: number;
  readonly ended: number;
  readonly excluded: Readonly<Record<string, number>>;
  /** Share healed by a day, with its limits by patient; cut where fewer than five are at risk. */
  readonly curve: readonly HealingCurvePoint[];
  readonly median: { readonly days: number | null; readonly lower: number | null; readonly upper: number | null };
  /** `null` unless it was asked for, or where bones ended unhealed. */
  readonly betweenFilms: BetweenFilms | null;
  readonly medianGainMm: number | null;
  readonly notes: readonly Note[];
};
export type HealingCurveAnswer = Head & {
  readonly measure: "time-to-consolidation";
  readonly unit: "days";
  readonly definition: { readonly title: string; readonly sentence: string };
  readonly groups: readonly CurveGroup[];
  /** What ends the time at risk without healing, in words; `null` where nothing did. */
  readonly competing: string | null;
  /** Day after surgery from which days are counted; `null`: surgery itself. */
  readonly landmarkDay: number | null;
  /** `null` unless it was asked for, or where fewer than two groups have a curve. */
  readonly test: CurveTest | null;
  readonly notes: readonly Note[];
};

/** Healing on the day of the film that showed it, or read between films too. */
export type Films = "showed" | "between";

/** The gain bands of the trade's question (measures, *Summaries*), as a split. */
export const gainBands = "gainMm:30/50/80";

const cached = answerCache<HealingCurveAnswer>();

/** The consolidation curve in days with the unhealed in, by group or by gain band. */
export async function healingCurve(
  registry: Registry,
  asked: {
    readonly by?: readonly string[];
    readonly where?: Where;
    readonly rescue?: Rescue;
    readonly landmark?: number;
    /** `between`: beside the curve, healing read between films. */
    readonly films?: Films;
    /** p values appear only when asked for. */
    readonly test?: boolean;
    readonly asOf?: number;
  },
): Promise<HealingCurveAnswer> {
  const { landmark, rescue = "counted", films = "showed", test = false, by = [] } = asked;
  const definition = atLandmark({ ...indexDefinition("time-to-consolidation"), rescue }, landmark);
  const head = await openQuestion(registry, {
    ...asked,
    measure: "time-to-consolidation.curve",
    method:
      "Kaplan–Meier on the day scale, log-log limits, robust by patient; where bones ended unhealed, Aalen–Johansen, by patient: bootstrap from 20 patients, else jackknife",
    options: { rescue, ...landmarkOption(definition), ...(films === "between" ? { films } : {}), ...(test ? { test } : {}) },
    seed,
  });
  return cached(`${registry.folder} ${head.stamp}`, async () => {
    const groups = await dayGroups(registry, head.state, definition, { where: asked.where ?? {}, by });
    const placed = groups.map((group) => ({ group, ...curveRows(group) }));
    const answered = placed.map((one) => answerGroup(one, whatEnds[rescue], films));
    const ends = answered.some(({ ended }) => ended > 0);
    return {
      ...head,
      measure: "time-to-consolidation",
      unit: "days",
      definition: { title: definition.title, sentence: definitionSentence(definition) },
      groups: answered,
      competing: ends ? whatEnds[rescue] : null,
      landmarkDay: landmark ?? null,
      test: test
        ? curveTest(
            placed.map(({ group, onCurve }) => ({ ...group, onCurve })),
            whatEnds[rescue],
          )
        : null,
      notes: splitNotes(fieldsOfSplit(by), definition),
    };
  });
}

const whatEnds: Readonly<Record<Rescue, string>> = {
  counted: "ended unhealed",
  competing: "a rescue operation, or ended unhealed",
};

type Placed = { readonly group: DayGroup } & ReturnType<typeof curveRows>;

function answerGroup({ group, onCurve, excluded }: Placed, competing: string, films: Films): CurveGroup {
  const having = (outcome: OnCurve["outcome"]) => onCurve.filter((row) => row.outcome === outcome).length;
  const head = {
    key: group.key,
    label: group.label,
    patients: new Set(group.cases.map(({ segment }) => segment.person)).size,
    segments: group.cases.length,
    n: onCurve.length,
    healed: having("healed"),
    rescued: onCurve.filter(({ rescued }) => rescued).length,
    censored: having("censored"),
    ended: having("ended"),
    excluded,
    betweenFilms: films === "between" ? betweenFilms(onCurve) : null,
    medianGainMm: middle(onCurve.flatMap(({ gainMm }) => (gainMm === null ? [] : [gainMm]))),
  };
  if (onCurve.length === 0) return { ...head, curve: [], median: { days: null, lower: null, upper: null }, notes: [] };
  const { notes, ...drawn } = head.ended > 0 ? withEnded(onCurve, competing) : withoutEnded(onCurve, excluded["healing-date-missing"] ?? 0);
  // how many are censored and missing is told by the counts of the group
  return { ...head, ...drawn, notes: notes.filter(({ code }) => code !== "censored-and-missing").map(said) };
}
