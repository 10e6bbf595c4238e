import * as z from "zod";
import { chiSquare } from "../chi-square";
import { cochranArmitage } from "../cochran-armitage";
import { fisherExact } from "../fisher-exact";
import { holm } from "../holm";
import { kruskalWallis } from "../kruskal-wallis";
import { mannWhitney } from "../mann-whitney";
import { signedRank } from "../signed-rank";
import { method } from "./entry";
import { between, confidence, counts, group, numbers, table, values } from "./fields";

const exact = z.boolean().describe("all arrangements, or the normal approximation; by the number of values unless said").exactOptional();
const groups = { values: [3.1, 4.2, 2.8, 5, 6.1, 4.9, 7.3, 5.5], group: ["a", "a", "a", "a", "b", "b", "b", "b"] };

export const tables = [
  method(
    "mann-whitney",
    "Two groups by ranks, with the shift",
    z.strictObject({ values, group, between, exact, confidence }),
    mannWhitney,
    groups,
  ),
  method("signed-rank", "Differences by signed ranks, with the pseudo-median", z.strictObject({ values, exact, confidence }), signedRank, {
    values: [1.2, -0.4, 2.2, 0.9, 1.7, 0.3, -0.1],
  }),
  method("kruskal-wallis", "Several groups by ranks", z.strictObject({ values, group }), kruskalWallis, groups),
  method("fisher-exact", "Exact test of a cross-table", z.strictObject({ table, confidence }), fisherExact, {
    table: [
      [3, 1],
      [1, 3],
    ],
  }),
  method(
    "chi-square",
    "Chi-square test of a cross-table",
    z.strictObject({ table, continuity: z.boolean().default(false).describe("Yates’ correction, 2 by 2 only") }),
    chiSquare,
    {
      table: [
        [18, 22],
        [9, 41],
      ],
    },
  ),
  method(
    "cochran-armitage",
    "Trend of shares over ordered groups",
    z.strictObject({ x: counts, n: counts, scores: numbers.exactOptional() }),
    cochranArmitage,
    { x: [1, 5, 9], n: [20, 22, 19] },
  ),
  method("holm", "p values adjusted for looking several times", z.strictObject({ p: z.array(z.number().min(0).max(1)) }), holm, {
    p: [0.04, 0.01, 0.2],
  }),
];
