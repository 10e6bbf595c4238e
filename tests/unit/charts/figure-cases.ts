import { describe, expect, test } from "vitest";
import { checkScene, drawSvg, type Figure, type FigureSource, figureCsv, type Scene } from "@/lib/charts";
import { apart } from "@/lib/charts/place/symbols";

/** Stamp and definition of invented records. */
export const inventedSource = {
  definition: { title: "Invented measure", sentence: "days from surgery to consolidation, on film" },
  batch: 3,
  stamp: "0a1b2c3d4e5f",
  dataTo: "2024 Q3",
} as const;

export const widths = [880, 328] as const;

export function labelsIn({ marks }: Pick<Scene, "marks">): readonly string[] {
  return marks.flatMap(apart).flatMap((mark) => ("label" in mark && mark.label !== undefined ? [mark.label] : []));
}

export function textsIn({ marks }: Pick<Scene, "marks">): readonly string[] {
  return marks.flatMap((mark) => (mark.mark === "text" ? [mark.text] : []));
}

/** All that a scene's text says, so that words broken into lines are found. */
export function allText(scene: Scene): string {
  return textsIn(scene).join(" ");
}

export function deepFreeze<T>(value: T): T {
  if (typeof value === "object" && value !== null) for (const inner of Object.values(Object.freeze(value))) deepFreeze(inner);
  return value;
}

/**
 * What every figure must stand: each record at both widths and in each unit is sound (`checkScene`), looks as it did (the picture beside
 * the tests is the review), has a name, a description, a whole caption and a table without holes, and leaves its record alone.
 * `unpictured`: records too large for a picture, checked all the same.
 */
export function figureCases<R extends FigureSource>(
  figure: Figure<R>,
  records: Readonly<Record<string, R>>,
  { unpictured = {} }: { readonly unpictured?: Readonly<Record<string, R>> } = {},
) {
  describe.each(Object.entries({ ...records, ...unpictured }))(`${figure.id}: %s`, (name, record) => {
    const units = figure.units(record);
    for (const width of [240, ...widths, 1200])
      test(`is sound at ${width} px`, () => {
        for (const unit of units) expect(checkScene(figure.layout(deepFreeze(record), { width, unit }))).toEqual([]);
      });
    for (const width of name in records ? widths : [])
      test(`looks as it did at ${width} px`, async () => {
        const unit = (width === 880 ? units[0] : units.at(-1)) ?? "";
        const svg = drawSvg(figure.layout(record, { width, unit }));
        await expect(svg).toMatchFileSnapshot(`snapshots/${figure.id}-${name}-${width}.svg`);
      });
    test("has a caption that states cohort, definition, data, batch and reference", () => {
      const caption = figure.caption(record, { cohort: "bone femur or tibia" });
      for (const part of ["cohort: bone femur or tibia", record.definition.sentence, "Data to 2024 Q3, batch 3", "reference 0a1b2c3d4e5f"])
        expect(caption).toContain(part);
      expect(caption).not.toMatch(/undefined|NaN|null|\.\.|\. \./);
    });
    test("has a table whose rows fit its heads, and the same as CSV", () => {
      for (const unit of units) {
        const table = figure.table(record, unit);
        expect(new Set(table.columns.map(({ id }) => id)).size).toBe(table.columns.length);
        for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
        expect(JSON.stringify(table)).not.toMatch(/undefined|NaN|null/);
        const lines = figureCsv(table).split("\r\n");
        expect(lines).toHaveLength(table.rows.length + 2);
      }
    });
    test("says no word that isn't one", () => {
      const scene = figure.layout(record);
      expect(`${scene.title} ${scene.description} ${allText(scene)} ${labelsIn(scene).join(" ")}`).not.toMatch(
        /undefined|NaN|null|Infinity/,
      );
    });
  });

  test(`${figure.id} refuses a width below 240 px and a unit in which it is never read`, () => {
    const [record] = Object.values(records);
    if (record === undefined) throw new RangeError("figureCases requires at least one record, received none");
    expect(() => figure.layout(record, { width: 239 })).toThrow(/requires a width of at least 240 px, received 239/);
    expect(() => figure.layout(record, { unit: "furlongs" })).toThrow(RangeError);
  });
}
