/** Where a number of the scenario comes from. A published one names its series; `invented` says so. */
export type Source = { readonly series: string; readonly says: string } | { readonly invented: string };

export type HealingGroup =
  | "femur-nail-antegrade"
  | "femur-nail-retrograde"
  | "tibia-nail"
  | "femur-mechanical-nail"
  | "femur-over-nail"
  | "tibia-over-nail"
  | "tibia-then-nail"
  | "femur-frame"
  | "tibia-frame"
  | "humerus"
  | "small-bone";

export type HealingParameters = {
  /** Mean index from surgery to consolidation, at the typical gain. */
  readonly meanDaysPerCm: number;
  /** Standard deviation of that index between segments. */
  readonly sdDaysPerCm: number;
  readonly typicalGainCm: number;
  readonly source: Source;
};

/** 365.25 / 12, by which months per centimetre of a source become days. */
const daysPerMonth = 30.4375;
const events286 = "286 lengthenings with magnetic nails, one institution 2012-2019, https://vivo.weill.cornell.edu/display/pubid40456100";

/** Speed of healing by bone and device. The sources give a mean index; most do not state its start, so they are a guide to size and no more. */
export const healing: Readonly<Record<HealingGroup, HealingParameters>> = {
  "femur-nail-antegrade": {
    meanDaysPerCm: 24.5,
    sdDaysPerCm: 9.5,
    typicalGainCm: 5,
    source: { series: events286, says: "antegrade femur 24.5 (SD 9.5) days/cm, 164 segments" },
  },
  "femur-nail-retrograde": {
    meanDaysPerCm: 33.5,
    sdDaysPerCm: 14.5,
    typicalGainCm: 4.5,
    source: { series: events286, says: "retrograde femur 33.5 (SD 14.5) days/cm, 67 segments" },
  },
  "tibia-nail": {
    meanDaysPerCm: 41,
    sdDaysPerCm: 17.4,
    typicalGainCm: 4.2,
    source: { series: events286, says: "antegrade tibia 41.0 (SD 17.4) days/cm, 55 segments" },
  },
  "femur-mechanical-nail": {
    meanDaysPerCm: 35,
    sdDaysPerCm: 13,
    typicalGainCm: 4.5,
    source: {
      series: "Acta Orthop 2011;82:344-350, doi 10.3109/17453674.2011.584209",
      says: "motorised nail, femur 35 days/cm; SD invented",
    },
  },
  "femur-over-nail": {
    meanDaysPerCm: 36,
    sdDaysPerCm: 13,
    typicalGainCm: 5,
    source: { invented: "no index of femoral lengthening over nail was seen in print" },
  },
  "tibia-over-nail": {
    meanDaysPerCm: (6.6 / 5.2) * daysPerMonth,
    sdDaysPerCm: 14,
    typicalGainCm: 5,
    source: { series: "Bone Joint Res 2016;5:1-10, doi 10.1302/2046-3758.51.2000577", says: "6.6 months for 5.2 cm; SD invented" },
  },
  "tibia-then-nail": {
    meanDaysPerCm: 0.9 * daysPerMonth,
    sdDaysPerCm: 10,
    typicalGainCm: 5,
    source: {
      series: "J Limb Lengthen Reconstr 2020;6:13-19, doi 10.4103/jllr.jllr_3_20",
      says: "lengthening and then nailing 0.9 months/cm; SD invented",
    },
  },
  "femur-frame": {
    meanDaysPerCm: 47.1,
    sdDaysPerCm: 18,
    typicalGainCm: 4.5,
    source: {
      series: "Bone Joint J 2016;98-B:1382-1388, doi 10.1302/0301-620X.98B10.36643",
      says: "femur, monolateral 47.1 days/cm; SD invented",
    },
  },
  "tibia-frame": {
    meanDaysPerCm: 55,
    sdDaysPerCm: 24,
    typicalGainCm: 4.5,
    source: { series: "Children 2023;10:1586, doi 10.3390/children10101586", says: "tibia, circular frame 55 (SD 24) days/cm" },
  },
  humerus: {
    meanDaysPerCm: 28,
    sdDaysPerCm: 6,
    typicalGainCm: 7,
    source: {
      series: "Clin Orthop Surg 2019;11:226-232, doi 10.4055/cios.2019.11.2.226",
      says: "humerus 27.2 days/cm at 7.4 cm; SD invented",
    },
  },
  "small-bone": {
    meanDaysPerCm: 73,
    sdDaysPerCm: 14,
    typicalGainCm: 2,
    source: {
      series: "J Pediatr Orthop B 2004;13:206-210, doi 10.1097/00009957-200405000-00012",
      says: "metatarsal 73 (41-98) days/cm at 2.0 cm; SD invented",
    },
  },
};

/**
 * Days to consolidation = fixed part + days per cm × gain, so that the index falls as gain rises.
 * Source of the shape: 319 frames, months/cm 2.3 at most 4 cm, 1.6 from 4 to 7, 1.2 above 7; the share itself is invented.
 */
export const fixedShare = 0.4;

/** Of the scatter of an index, the part left when gain, age and smoking are taken out. Invented. */
export const residualShare = 0.6;

/** Share of the residual scatter that two segments of one person have in common. Invented; rounding to visits lowers what is seen. */
export const sharedByPerson = 0.5;

/** Band in which the intraclass correlation of the residual days must lie in the file as written (a test works it out anew). */
export const statedCorrelationBand: readonly [number, number] = [0.35, 0.65];

/** Factors on days to consolidation. Smoking, age from 30 and larger gain are named as risks by Clin Orthop Relat Res 2011, PMC3008908; the sizes are invented. */
export const slower = {
  smokingNow: 1.14,
  perYearAbove30: 1.006,
  vitaminDDeficiency: 1.05,
  below15Years: 0.86,
  obliqueOsteotomy: 0.98,
} as const;

/** Events a segment. Sources: 332 events in 983 nailed segments, doi 10.1080/17453674.2020.1835321; pin sites in frames "all had problems", J Pediatr Orthop 2000;20:151-159; split by type invented. */
export const eventsPerSegment = { nail: 0.34, frame: 0.55, pinSite: 0.6 } as const;

/** Cases by year of surgery: a steady unit with a dip in the third year. Invented. */
export const yearWeights: readonly (readonly [year: number, weight: number])[] = [
  [2018, 0.15],
  [2019, 0.16],
  [2020, 0.115],
  [2021, 0.125],
  [2022, 0.155],
  [2023, 0.15],
  [2024, 0.145],
];

/** The one seed of every file. */
export const seed = "invented-unit-2025";
