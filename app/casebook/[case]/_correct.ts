import type { CaseAnswer, CaseCorrection, Held } from "@/lib/answers";
import { type Field, fieldsOf, type TableName, tableNames, type Value } from "@/lib/codebook";
import { isCorrectable } from "@/lib/registry";
import { codeWords } from "../_words";

/** What the address asks to correct: a row, and a field of it once it is chosen. */
export type CorrectAsked = { readonly table: TableName; readonly entity: number; readonly field: string | null };

/** `segment-172-gainMm` or `segment-172`; `null` when it names no row or no field that can be corrected. */
export function readCorrect(text: string | string[] | undefined): CorrectAsked | null {
  const [name, entity, field = null] = typeof text === "string" ? text.split("-") : [];
  const table = tableNames.find((one) => one === name);
  if (!table || !/^\d{1,9}$/.test(entity ?? "") || (field !== null && !isCorrectable(table, field))) return null;
  return { table, entity: Number(entity), field };
}

export function correctName(table: TableName, entity: number, field?: string): string {
  return [table, entity, ...(field === undefined ? [] : [field])].join("-");
}

/** Fields of a table that can be corrected, in the codebook's order. */
export function correctableFields(table: TableName): readonly (readonly [id: string, field: Field])[] {
  return fieldsOf(table).filter(([id]) => isCorrectable(table, id));
}

export type RowInCase = { readonly name: string; readonly valueOf: (field: string) => Value };

const lookUp =
  (recorded: readonly Held[], more: Readonly<Record<string, Value>> = {}) =>
  (field: string) =>
    more[field] ?? recorded.find((held) => held.field === field)?.value ?? null;

/** The row of a case that is to be corrected, in words and with what is held of it; `null`: the case has no such row. */
export function rowInCase(answer: CaseAnswer, table: TableName, entity: number): RowInCase | null {
  switch (table) {
    case "person":
      return answer.case === entity ? { name: "the patient", valueOf: lookUp(answer.recorded) } : null;
    case "segment":
      return ofSegment(answer, entity);
    case "visit":
      return ofVisit(answer, entity);
    case "event":
      return ofEvent(answer, entity);
    case "bodyMeasure":
      return ofMeasure(answer, entity);
    case "score": {
      const score = answer.scores.find((one) => one.score === entity);
      return score ? { name: `the score ${codeWords(score.code)}${dayWords(score.day)}`, valueOf: () => score.value } : null;
    }
  }
}

const dayWords = (day: number | null) => (day === null ? "" : ` of day ${day}`);

function ofSegment({ segments }: CaseAnswer, entity: number): RowInCase | null {
  const segment = segments.find((one) => one.segment === entity);
  return segment ? { name: `the ${segment.side} ${codeWords(segment.bone)}`, valueOf: lookUp(segment.recorded) } : null;
}

function ofVisit({ segments }: CaseAnswer, entity: number): RowInCase | null {
  for (const { side, bone, visits } of segments) {
    const visit = visits.find((one) => one.visit === entity);
    if (visit) return { name: `the visit${dayWords(visit.day)} of the ${side} ${codeWords(bone)}`, valueOf: lookUp(visit.recorded) };
  }
  return null;
}

function ofEvent({ segments, events }: CaseAnswer, entity: number): RowInCase | null {
  const event = [...events, ...segments.flatMap((segment) => segment.events)].find((one) => one.event === entity);
  if (!event) return null;
  const phase = event.phaseDerived ? null : event.phase;
  return { name: `the event ${codeWords(event.type)}${dayWords(event.day)}`, valueOf: lookUp(event.recorded, { phase }) };
}

function ofMeasure({ body }: CaseAnswer, entity: number): RowInCase | null {
  const measure = body.measures.find((one) => one.measure === entity);
  return measure
    ? { name: `the body measure${dayWords(measure.day)}`, valueOf: lookUp(measure.recorded, { occasion: measure.occasion }) }
    : null;
}

/** The correction of a field that stands, if one does. */
export function correctionOf(
  corrections: readonly CaseCorrection[],
  table: TableName,
  entity: number,
  field: string,
): CaseCorrection | undefined {
  return corrections.find((one) => one.table === table && one.entity === entity && one.field === field);
}
