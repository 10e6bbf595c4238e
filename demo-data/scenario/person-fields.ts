import type { Chance } from "./chance";
import type { Group, PersonDraft, Sex } from "./types";

/** Age at first surgery in years, by reason for lengthening. Invented. */
export function ageOf(chance: Chance, group: Group): number {
  const ages: Readonly<Record<Group, readonly [mean: number, sd: number, low: number, high: number]>> = {
    stature: [29, 6.5, 19, 46],
    dysplasia: [13, 3.5, 8, 24],
    difference: [19, 10, 8, 52],
    deformity: [30, 12, 12, 61],
    loss: [38, 12, 20, 62],
  };
  const [mean, sd, low, high] = ages[group];
  return Math.min(high, Math.max(low + chance.between(0, 3), mean + sd * chance.skewed()));
}

export function sexOf(chance: Chance, group: Group): Sex {
  return chance.happens(group === "stature" ? 0.68 : group === "loss" ? 0.75 : 0.52) ? "male" : "female";
}

type Aetiology = NonNullable<PersonDraft["aetiology"]>;
const aetiologies: Readonly<Record<Group, readonly (readonly [Aetiology, number])[]>> = {
  stature: [
    ["constitutional-short-stature", 62],
    ["idiopathic-short-stature", 26],
    ["growth-hormone-deficiency", 5],
    ["small-for-gestational-age", 5],
    ["turner", 2],
  ],
  dysplasia: [
    ["achondroplasia", 62],
    ["hypochondroplasia", 26],
    ["other-dysplasia", 12],
  ],
  difference: [
    ["congenital-femoral-deficiency", 24],
    ["fibular-hemimelia", 15],
    ["growth-arrest", 20],
    ["post-traumatic", 22],
    ["post-infective", 6],
    ["hemihypertrophy", 5],
    ["enchondromatosis", 4],
    ["neurological", 3],
    ["tibial-hemimelia", 1],
  ],
  deformity: [
    ["post-traumatic", 55],
    ["blount", 20],
    ["growth-arrest", 15],
    ["other", 10],
  ],
  loss: [
    ["post-traumatic", 60],
    ["post-infective", 40],
  ],
};
const indications = {
  stature: "stature",
  dysplasia: "stature",
  difference: "limb-length-discrepancy",
  deformity: "deformity-with-shortening",
  loss: "bone-loss",
} as const satisfies Readonly<Record<Group, PersonDraft["indication"]>>;

/** What is recorded once a person. Turner is given to women only. */
export function personFieldsOf(chance: Chance, group: Group, sex: Sex, age: number): PersonDraft {
  const drawn = chance.weighted(aetiologies[group]);
  const aetiology = drawn === "turner" && sex === "male" ? "idiopathic-short-stature" : drawn;
  const smoking = age < 16 ? "never" : chance.among({ never: 62, ever: 17, now: 15, unknown: 6 }); // prettier-ignore
  return {
    sex,
    indication: indications[group],
    aetiology,
    smoking,
    diabetes: chance.happens(0.94) ? chance.happens(age > 40 ? 0.07 : 0.01) : null,
    vitaminDDeficiency: chance.happens(0.82) ? chance.happens(0.24) : null,
    antiInflammatoryUse: chance.happens(0.7) ? chance.happens(0.12) : null,
    earlierInfection: chance.happens(0.9) ? aetiology === "post-infective" : null,
    permittedUse: chance.weighted([
      ["research-with-consent", 68],
      ["audit-only", 17],
      ["research-by-approval", 8],
      ["withdrawn", 2],
      [null, 5],
    ] as const), // prettier-ignore
    earlierLengtheningElsewhere: chance.happens(0.9) ? chance.happens(group === "difference" ? 0.08 : 0.01) : null,
  };
}
