import type { Chance } from "./chance";
import type { Body, Group, Sex } from "./types";

const mm = (value: number) => Math.round(value);
const within = (low: number, high: number, value: number) => Math.min(high, Math.max(low, value));

/** Mean stature before surgery. Invented, but for the order of size; adults of a stature unit are short, children grow along a line. */
function meanStatureMm(group: Group, sex: Sex, age: number): number {
  const adult = { stature: { female: 1530, male: 1648 }, dysplasia: { female: 1235, male: 1300 } };
  const others = { female: 1630, male: 1755 };
  const grown = group === "stature" || group === "dysplasia" ? adult[group][sex] : others[sex];
  const share = age >= 17 ? 1 : 0.72 + (0.28 * (age - 7)) / 10;
  return grown * within(0.68, 1, share);
}

const sdStatureMm: Readonly<Record<Group, number>> = { stature: 38, dysplasia: 40, difference: 55, deformity: 55, loss: 60 };

/**
 * The body before the first operation. Ratios: sitting height and span of a large adult sample (NATICK/TR-15/007, means of women and men),
 * tibia : femur 0.78 on standing film (Osteology 2021;1:86-91); in dysplasia invented.
 */
export function bodyOf(chance: Chance, group: Group, sex: Sex, age: number): Body {
  const statureMm = mm(meanStatureMm(group, sex, age) + sdStatureMm[group] * within(-1.8, 1.8, chance.normal()));
  const short = group === "dysplasia";
  const femur = statureMm * (short ? 0.205 : 0.27 + 0.004 * chance.normal());
  const tibia = femur * (short ? 0.84 : 0.785 + 0.015 * chance.normal());
  const adult = age >= 18 && !short;
  const femurMm = adult ? within(408, 560, femur) : femur;
  const tibiaMm = adult ? within(324, 440, tibia) : tibia;
  const sitting = short ? 0.62 : (sex === "female" ? 0.529 : 0.525) + 0.01 * chance.normal();
  const span = short ? 0.93 : (sex === "female" ? 1.02 : 1.033) + 0.02 * chance.normal();
  return {
    statureMm,
    sittingHeightMm: mm(statureMm * sitting),
    armSpanMm: mm(statureMm * span),
    weightKg: mm((statureMm / 1000) ** 2 * (age < 14 ? 18.5 : 24) + 3 * chance.normal()),
    femurMm: { left: mm(femurMm), right: mm(femurMm + chance.whole(-3, 3)) },
    tibiaMm: { left: mm(tibiaMm), right: mm(tibiaMm + chance.whole(-3, 3)) },
    humerusMm: mm(femurMm * 0.72),
  };
}
