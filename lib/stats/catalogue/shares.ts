import * as z from "zod";
import { clopperPearson } from "../clopper-pearson";
import { eventRate } from "../event-rate";
import { exactRateRatio } from "../exact-rate-ratio";
import { garwood } from "../garwood";
import { newcombeDifference } from "../newcombe-difference";
import { percentFits } from "../percent-fits";
import { rateRatio } from "../rate-ratio";
import { riskDifference } from "../risk-difference";
import { riskRatio } from "../risk-ratio";
import { wilson } from "../wilson";
import { wilsonClustered } from "../wilson-clustered";
import { method } from "./entry";
import { between, confidence, counts, event, group, patient } from "./fields";

const x = z.number().int().nonnegative().describe("cases with the event");
const n = z.number().int().positive().describe("cases");
const share = z.strictObject({ x, n, confidence });
const positive = z.number().positive();
const exposure = z.array(positive).describe("exposure a row, such as centimetres gained");
const per = positive.default(1).describe("the rate is given per so much exposure");
const twoGroups = { group, patient, between, confidence };
const compared = { group: ["a", "a", "a", "b", "b", "b", "b"], patient: [1, 2, 3, 4, 5, 6, 6] };

export const shares = [
  method("wilson", "A share with Wilson’s score interval", share, wilson, { x: 15, n: 148 }),
  method("clopper-pearson", "A share with the exact interval", share, clopperPearson, { x: 15, n: 148 }),
  method("wilson-clustered", "A share of segments, clustered by patient", z.strictObject({ event, patient, confidence }), wilsonClustered, {
    event: [1, 0, 0, 1, 1, 0],
    patient: ["a", "a", "b", "c", "c", "d"],
  }),
  method(
    "newcombe-difference",
    "Difference of two independent shares",
    z.strictObject({ x1: x, n1: n, x2: x, n2: n, confidence }),
    newcombeDifference,
    { x1: 56, n1: 70, x2: 48, n2: 80 },
  ),
  method("risk-difference", "Difference of two shares of segments, clustered", z.strictObject({ event, ...twoGroups }), riskDifference, {
    event: [1, 1, 0, 1, 0, 0, 0],
    ...compared,
  }),
  method("risk-ratio", "Ratio of two shares of segments, clustered", z.strictObject({ event, ...twoGroups }), riskRatio, {
    event: [1, 1, 0, 1, 0, 0, 0],
    ...compared,
  }),
  method(
    "percent-fits",
    "Whether a printed percentage fits its counts",
    z.strictObject({
      x,
      n,
      printed: z.number().nonnegative().describe("the percentage as printed"),
      digits: z.number().int().nonnegative().max(6).describe("decimals it was printed with"),
    }),
    percentFits,
    { x: 98, n: 140, printed: 72, digits: 0 },
  ),
  method(
    "garwood",
    "A count over exposure with the exact interval",
    z.strictObject({ events: x, exposure: positive.default(1), per, confidence }),
    garwood,
    { events: 27, exposure: 312.4, per: 10 },
  ),
  method(
    "event-rate",
    "Events over exposure, clustered by patient",
    z.strictObject({ events: counts, exposure, patient, per, confidence }),
    eventRate,
    { events: [1, 0, 2, 1, 0, 3], exposure: [4, 5, 6, 3, 4, 5], patient: ["a", "b", "c", "d", "e", "f"], per: 10 },
  ),
  method(
    "exact-rate-ratio",
    "Ratio of two rates with the exact interval",
    z.strictObject({ events1: x, exposure1: positive, events2: x, exposure2: positive, confidence }),
    exactRateRatio,
    { events1: 11, exposure1: 800, events2: 21, exposure2: 3011 },
  ),
  method("rate-ratio", "Ratio of two rates, clustered by patient", z.strictObject({ events: counts, exposure, ...twoGroups }), rateRatio, {
    events: [2, 1, 3, 1, 1, 0, 1],
    exposure: [4, 5, 6, 4, 5, 3, 3],
    ...compared,
  }),
];
