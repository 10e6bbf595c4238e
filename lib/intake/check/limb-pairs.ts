import type { PersonRow, SegmentRow } from "@/lib/codebook";
import type { RowFact } from "./segment-fact";

/** A fact of a segment that another segment of the person gives, and that other one. */
export type PairFact = { readonly of: SegmentRow; readonly other: SegmentRow; readonly fact: RowFact };

const dysplasias: ReadonlySet<string | null> = new Set(["achondroplasia", "hypochondroplasia", "other-dysplasia"]);
const mostApartMm = 18;
const oneSidePlanMm = [50, 100] as const;
const oldest = 90;

/** Two sides of a person, same bone, in stature lengthening and dysplasia: median 4 mm apart, up to 18 seen. */
export function sidesUnlike(segments: readonly SegmentRow[], person: PersonRow | undefined): readonly PairFact[] {
  if (!person || (person.indication !== "stature" && !dysplasias.has(person.aetiology))) return [];
  return segments.flatMap((left) => {
    if (left.side !== "left" || left.gainMm === null) return [];
    const right = nearest(
      left,
      segments.filter(({ bone, side, gainMm }) => bone === left.bone && side === "right" && gainMm !== null),
    );
    const by = right ? Math.abs((left.gainMm as number) - (right.gainMm as number)) : 0;
    if (!right || by <= mostApartMm) return [];
    return [
      {
        of: left,
        other: right,
        fact: {
          code: "sides-unlike",
          field: "gainMm",
          found: `${Number(by.toFixed(1))} mm between the two sides`,
          about: { by: Number(by.toFixed(1)) },
        },
      },
    ];
  });
}

/** Femur and tibia of one side together: usually 50-100 mm planned (common practice, no source). */
export function planOfOneSide(segments: readonly SegmentRow[], person: PersonRow | undefined): readonly PairFact[] {
  if (person?.indication !== "stature") return [];
  return segments.flatMap((femur) => {
    if (femur.bone !== "femur" || femur.plannedGainMm === null) return [];
    const tibia = nearest(
      femur,
      segments.filter(({ bone, side, plannedGainMm }) => bone === "tibia" && side === femur.side && plannedGainMm !== null),
    );
    if (!tibia) return [];
    const sum = femur.plannedGainMm + (tibia.plannedGainMm as number);
    const [low, high] = oneSidePlanMm;
    if (sum >= low && sum <= high) return [];
    const what = "planned gain of femur and tibia of one side";
    return [
      {
        of: femur,
        other: tibia,
        fact: { code: "out-of-usual-range", field: "plannedGainMm", found: `${what} ${sum} mm`, about: { low, high, unit: "mm", what } },
      },
    ];
  });
}

/** Ages that don't grow with the years between two operations: whole years on both sides leave room for less than two. */
export function agesAgainstYears(segments: readonly SegmentRow[]): readonly PairFact[] {
  const aged = segments.filter(({ ageAtSurgeryYears }) => ageAtSurgeryYears !== null && ageAtSurgeryYears < oldest);
  const [first, ...later] = [...aged].sort((a, b) => a.surgeryYear - b.surgeryYear);
  if (!first) return [];
  return later.flatMap((row) => {
    const grown = (row.ageAtSurgeryYears as number) - (first.ageAtSurgeryYears as number);
    const years = row.surgeryYear - first.surgeryYear;
    if (Math.abs(grown - years) < 2) return [];
    return [
      {
        of: row,
        other: first,
        fact: {
          code: "age-against-year",
          field: "ageAtSurgeryYears",
          found: `an age ${Math.round(grown)} years from that of an operation ${years} years before`,
        },
      },
    ];
  });
}

function nearest(of: SegmentRow, among: readonly SegmentRow[]): SegmentRow | undefined {
  let best: SegmentRow | undefined;
  for (const row of among) if (!best || distance(of, row) < distance(of, best)) best = row;
  return best;
}

function distance(a: SegmentRow, b: SegmentRow): number {
  return Math.abs(a.surgeryDay - b.surgeryDay);
}
