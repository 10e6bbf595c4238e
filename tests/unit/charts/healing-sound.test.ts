import { expect, test } from "vitest";
import { checkScene, type HealingRecordForFigure, layoutHealing } from "@/lib/charts";
import { emptyGroup, inventedGroup, inventedMarks, inventedRecord } from "./invented";

const records: Readonly<Record<string, HealingRecordForFigure>> = {
  "two groups and an empty one": inventedRecord([
    inventedGroup("Femur", inventedMarks(280)),
    inventedGroup("Tibia", inventedMarks(200, { seed: 11, middle: 44 })),
    emptyGroup("Humerus"),
  ]),
  "twelve segments": inventedRecord([inventedGroup("All segments", inventedMarks(12))]),
  "5 000 segments": inventedRecord([inventedGroup("All segments", inventedMarks(5000))]),
  "a long name": inventedRecord([
    inventedGroup("Frame, then nail, in the same anaesthetic, with a name too long for a line", inventedMarks(30)),
  ]),
  nothing: inventedRecord([]),
};

for (const [name, record] of Object.entries(records))
  test.each([240, 328, 880, 1200])(`healing of ${name} is sound at %i px`, (width) => {
    for (const unit of ["days/cm", "months/cm"] as const) expect(checkScene(layoutHealing(record, { width, unit }))).toEqual([]);
  });
