import boys from "./boys-long-bones.json";

/** A published norm of a ratio for one way of measuring. */
export type ProportionNorm = {
  readonly id: string;
  readonly of: "proportion-tibia-femur" | "proportion-sitting-height" | "proportion-span" | "proportion-leg";
  readonly sex: "female" | "male" | "both";
  readonly mean: number;
  /** `null`: the source prints a range and no deviation. */
  readonly sd: number | null;
  readonly range: readonly [number, number] | null;
  readonly method: "standing-film" | "landmarks-as-for-dry-bone" | "body-measures";
  readonly source: string;
};

const army = "ANSUR II (Gordon CC et al., NATICK/TR-15/007, 2014), public data, 4 082 men and 1 986 women; an army sample, not a clinic’s";

/** Norm sets that ship; a person's reference is chosen by id, and without one only raw ratios are shown. No norm goes by ethnic group. */
export const proportionNorms: readonly ProportionNorm[] = [
  {
    id: "dry-bone-adults",
    of: "proportion-tibia-femur",
    sex: "both",
    mean: 0.8,
    sd: 0.03,
    range: null,
    method: "landmarks-as-for-dry-bone",
    source: "1 152 cadaver bones of 576 skeletons (Weinberg, Liu; J Pediatr Orthop; authors and year from memory)",
  },
  {
    id: "standing-film-adults",
    of: "proportion-tibia-femur",
    sex: "both",
    mean: 0.781,
    sd: null,
    range: [0.72, 0.86],
    method: "standing-film",
    source:
      "Aitken SA. Osteology 2021;1:86-91, 1 077 limbs of 753 patients, doi 10.3390/osteology1020009 (femur : tibia 1.28, 1.16 to 1.39, turned over)",
  },
  {
    id: "army-adults",
    of: "proportion-sitting-height",
    sex: "male",
    mean: 0.5231,
    sd: 0.0135,
    range: [0.4997, 0.5443],
    method: "body-measures",
    source: army,
  },
  {
    id: "army-adults",
    of: "proportion-sitting-height",
    sex: "female",
    mean: 0.5262,
    sd: 0.0141,
    range: [0.502, 0.5484],
    method: "body-measures",
    source: army,
  },
  {
    id: "army-adults",
    of: "proportion-span",
    sex: "male",
    mean: 1.033,
    sd: 0.0274,
    range: [0.991, 1.081],
    method: "body-measures",
    source: army,
  },
  {
    id: "army-adults",
    of: "proportion-span",
    sex: "female",
    mean: 1.0195,
    sd: 0.0292,
    range: [0.975, 1.072],
    method: "body-measures",
    source: army,
  },
  { id: "army-adults", of: "proportion-leg", sex: "male", mean: 0.4769, sd: 0.0135, range: null, method: "body-measures", source: army },
  { id: "army-adults", of: "proportion-leg", sex: "female", mean: 0.4738, sd: 0.0141, range: null, method: "body-measures", source: army },
];

export const boysLongBoneSource = boys.source;

/** Mean tibia : femur of boys of a whole age in years (ratio of the printed means); `null` outside 1 to 18. */
export function boysTibiaToFemur(ageYears: number): number | null {
  const femur = boys.femur.find(([age]) => age === ageYears)?.[2];
  const tibia = boys.tibia.find(([age]) => age === ageYears)?.[2];
  return femur === undefined || tibia === undefined ? null : tibia / femur;
}
