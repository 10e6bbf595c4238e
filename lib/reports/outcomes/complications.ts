import { ask, complicationMatrix, type MatrixAnswer, type MeasureAnswer, wordsOfCode } from "@/lib/answers";
import { type ComplicationMatrixRecord, complicationMatrixFigure, grouped } from "@/lib/charts";
import { drawable } from "../told/drawable";
import { askedOf, type PlaceQuestion, type Registry } from "../told/question";
import type { Told } from "../told/told";
import { classWords, upperFirst } from "../words/code-words";
import { commandWords } from "../words/command-words";
import { leftOutOf } from "../words/left-out";
import { notesOf } from "../words/notes";
import { agreementMethod, agreementTable, agreementText } from "./complication-agreement";
import { denominatorsTable, factsTable, implantsTable, operationsTable, worstTable } from "./complication-tables";
import { complicationSentences } from "./complication-words";
import { treatmentClasses } from "./treatment-classes";

export type EndRule = "healed-and-bearing" | "implant-removal" | "twelve-months";
export type ComplicationsQuestion = PlaceQuestion & {
  readonly scheme: string;
  readonly endRule: EndRule;
  readonly withoutPinSites: boolean;
};

/** The measures of one counting, each over its named denominator. */
export const overDenominators = [
  "complication-patients-with-any",
  "complication-segments-with-any",
  "complication-events-per-patient",
  "complication-events-per-segment",
  "complication-events-per-10cm",
  "operations-per-segment",
] as const;
const worst = "complication-worst";

/** Complications: how many patients had any, which, of what class, over which denominator. */
export async function tellComplications(registry: Registry, question: ComplicationsQuestion): Promise<Told> {
  const { scheme, endRule, withoutPinSites } = question;
  const asked = { ...askedOf(question), scheme, endRule, withoutPinSites };
  const matrix = await complicationMatrix(registry, asked);
  const answers = await Promise.all(
    [...overDenominators, worst].map((measure) => ask(registry, { ...asked, measure }) as Promise<MeasureAnswer>),
  );
  const by = new Map(answers.map((answer) => [answer.measure, answer]));
  const treatments = await treatmentClasses(registry, asked);
  const agreed = agreementTable(matrix);
  const options = { scheme, end: endRule === "healed-and-bearing" ? null : endRule, "without-pin-sites": withoutPinSites ? "" : null };
  return {
    title: "Complications",
    sentences: [...complicationSentences(matrix, by), treatments?.sentence ?? null, agreementText(matrix)].filter((text) => text !== null),
    cautions: withoutPinSites ? ["Pin-site infections are left out of every number here."] : [],
    figures: [drawable(complicationMatrixFigure, matrixRecord(matrix, by.get("complication-segments-with-any")))],
    tables: [
      denominatorsTable(overDenominators.flatMap((id) => by.get(id) ?? [])),
      worstTable(by.get(worst), matrix),
      operationsTable(by.get("operations-per-segment")),
      factsTable(matrix),
      implantsTable(matrix),
      ...(treatments ? [treatments.table] : []),
      ...(agreed ? [agreed] : []),
    ],
    definition: `${matrix.scheme.title} (${matrix.scheme.source}), derived from the facts of each event; end of treatment: ${endWords[endRule]}`,
    method: [matrix.method, by.get("complication-events-per-segment")?.method, agreementMethod(matrix)].filter(Boolean).join("; "),
    leftOut: leftOutOf(matrix.groups.map(countsOf)),
    notes: notesOf(
      [...matrix.notes, ...changesNotes(matrix), ...matrix.groups.flatMap(({ agreement }) => agreement?.notes ?? [])],
      by.get("complication-patients-with-any")?.groups ?? [],
    ),
    references: [
      { of: "by type and class", stamp: matrix.stamp },
      ...answers.map(({ definition, stamp }) => ({ of: definition.title.toLowerCase(), stamp })),
    ],
    commands: [
      commandWords("complications", question, options),
      ...[...overDenominators, worst].map((id) => commandWords(`measure ${id}`, question, options)),
    ],
    batch: matrix.batch,
    dataTo: matrix.dataTo,
  };
}

const endWords: Readonly<Record<EndRule, string>> = {
  "healed-and-bearing": "for nails the later of consolidation and full weight bearing, for frames their removal",
  "implant-removal": "removal of the implant",
  "twelve-months": "for nails twelve months from surgery, for frames their removal",
};

function changesNotes({ changesUnder }: MatrixAnswer): readonly { readonly text: string }[] {
  return Object.entries(changesUnder).map(([rule, n]) => ({
    text: `With the end of treatment at ${rule === "implant-removal" ? "implant removal" : "twelve months"}, ${n === 1 ? "1 event changes its" : `${grouped(n)} events change their`} class.`,
  }));
}

type Group = MatrixAnswer["groups"][number];

/** Transports aren't lengthenings, and events that nobody looked for are not none. */
function countsOf({ label, segments, lookedFor, notLookedFor }: Group) {
  const transports = segments - lookedFor - notLookedFor;
  return { label, excluded: { "not-lengthening": transports, "not-looked-for": notLookedFor } };
}

/** Types of one origin together, the origin with most events first. */
function byOrigin(rows: Group["rows"]): Group["rows"] {
  const events = new Map<string, number>();
  for (const { origin, events: n } of rows) events.set(origin, (events.get(origin) ?? 0) + n);
  const size = ({ origin }: Group["rows"][number]) => events.get(origin) ?? 0;
  return [...rows].sort((a, b) => size(b) - size(a) || (a.origin < b.origin ? -1 : Number(a.origin > b.origin)) || b.events - a.events);
}

function matrixRecord(matrix: MatrixAnswer, any: MeasureAnswer | undefined): ComplicationMatrixRecord {
  const { scheme } = matrix;
  const none = { x: 0, n: 0, patients: 0, estimate: null, lower: null, upper: null };
  const groups = matrix.groups.map((group) => {
    const own = any?.groups.find(({ label }) => label === group.label);
    return {
      ...countsOf(group),
      segments: group.segments,
      patients: own?.patients ?? 0,
      n: group.lookedFor,
      any: own?.share ?? none,
      rows: byOrigin(group.rows).map((row) => ({
        type: upperFirst(wordsOfCode(row.type)),
        origin: upperFirst(wordsOfCode(row.origin)),
        counts: row.byClass,
        share: row.segments,
      })),
    };
  });
  const unclassed = matrix.groups.some(({ rows }) => rows.some(({ byClass }) => (byClass.none ?? 0) > 0));
  const classes = scheme.classes.map((id) => ({ id, label: classWords(id) }));
  return {
    batch: matrix.batch,
    stamp: matrix.stamp,
    dataTo: matrix.dataTo,
    by: matrix.by,
    notes: matrix.notes,
    definition: { title: "Complications", sentence: "segments with at least one event of the type, of those whose events were looked for" },
    scheme: scheme.title,
    classes: unclassed ? [...classes, { id: "none", label: "no class" }] : classes,
    groups,
  };
}
