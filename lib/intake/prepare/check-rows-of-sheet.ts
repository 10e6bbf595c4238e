import type { BodyMeasureRow, EventRow, SegmentRow } from "@/lib/codebook";
import { isDay } from "../cells/cell-read";
import { checkEvent } from "../check/check-event";
import { checkSegment } from "../check/check-segment";
import { checkBody } from "../check/lengths";
import type { RowFact } from "../check/segment-fact";
import { dayOnLine } from "../strip";
import type { AnswerOf } from "./answers";
import { applyAnswers } from "./apply-answers";
import { findPart } from "./draft";
import { eachRow } from "./pace";
import type { StrippedSheet } from "./strip-drafts";
import { partIn, type StrippedDraft } from "./stripped-draft";
import { checkIndices, indexColumnsOf } from "./typed-indices";

/** Runs the checks of single rows over a stripped sheet, answers to their questions applied. */
export async function checkRowsOfSheet(sheet: StrippedSheet, answerOf: AnswerOf, pace: Parameters<typeof eachRow>[2]): Promise<void> {
  const indices = indexColumnsOf(sheet);
  await eachRow(
    sheet.stripped,
    (stripped) => {
      checkOne(stripped, answerOf);
      checkIndices(stripped, sheet.sheet.rows[stripped.draft.index] ?? [], indices);
      // what was read is needed no more: a hundred thousand rows would be held twice
      stripped.draft.parts.length = 0;
    },
    pace,
  );
}

function checkOne(stripped: StrippedDraft, answerOf: AnswerOf): void {
  const segment = partIn(stripped, "segment") as SegmentRow | undefined;
  const person = partIn(stripped, "person");
  const aetiology = (person?.aetiology ?? null) as string | null;
  if (segment) {
    dropTrapsOfRays(stripped, segment.bone);
    const context = {
      swapped: (field: string) => swappedDay(stripped, field),
      indication: (person?.indication ?? null) as string | null,
      aetiology,
    };
    keep(stripped, applyAnswers(stripped, segment, checkSegment(segment, context), answerOf));
  }
  for (const { table, row, nth } of stripped.parts) {
    const suffix = nth === null ? "" : `.${nth}`;
    if (table === "bodyMeasure") keep(stripped, checkBody(row as BodyMeasureRow, segment?.ageAtSurgeryYears ?? null, aetiology), suffix);
    if (table === "event") keep(stripped, checkEvent(row as EventRow, segment?.device ?? null), suffix);
  }
}

/** A ray is a tenth of a thigh bone's length: no slip of the unit. */
function dropTrapsOfRays({ facts }: StrippedDraft, bone: string | null): void {
  if (!bone?.endsWith("ray")) return;
  for (let i = facts.length - 1; i >= 0; i--) if (facts[i]?.code === "cm-typed-as-mm") facts.splice(i, 1);
}

/** Facts of a row, save those whose field already has one that sets the row aside. */
function keep(stripped: StrippedDraft, facts: readonly RowFact[], fieldSuffix = ""): void {
  for (const fact of facts) stripped.facts.push({ ...fact, column: null, field: `${fact.field}${fieldSuffix}` });
}

/** A day of a row with day and month exchanged, on the person's line. */
function swappedDay({ draft, keyed }: StrippedDraft, field: string): number | null {
  const value = findPart(draft, "segment")?.values[field];
  return keyed && isDay(value) && "on" in value && value.swapped !== null ? dayOnLine(value.swapped, keyed.shiftDays) : null;
}
