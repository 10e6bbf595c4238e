import { writeFileSync } from "node:fs";
import { type Covered, differenceCells, limitCells, meanCells, permutationRejects, shareCells } from "./simulated/cells";
import { exactCoverage, lowest, place, table } from "./simulated/report";

// Coverage of the clustered intervals and size of the permutation test, simulated; writes docs/methods-coverage.md.
// The seeds are fixed: the same code gives the same page. Exits with 1 when a promise isn't kept.

const REPEATS = 4000;
const REPEATS_BESIDE = 2000;
const REPEATS_PERMUTATION = 500;
const PROMISED = 0.93;

const began = performance.now();
const mean = meanCells(REPEATS, 1);
const difference = differenceCells(REPEATS, 1001);
const share = shareCells(REPEATS, 2001, 0.3);
const limit = limitCells(REPEATS_BESIDE, 6001);
const beside = [0.1, 0.5].map((p, i) => ({ p, cells: shareCells(REPEATS_BESIDE, 3001 + 1000 * i, p) }));
const sizes = [0, 0.5, 0.8].map((icc, i) => ({ icc, rejects: permutationRejects(REPEATS_PERMUTATION, 5001 + i, icc) }));
const rejects = sizes.reduce((sum, size) => sum + size.rejects, 0) / sizes.length;
const seconds = (performance.now() - began) / 1000;

const failed = [
  ...(
    [
      ["mean", mean],
      ["difference", difference],
      ["share at 0.3", share],
      ["limit of agreement", limit],
    ] as [string, Covered[]][]
  )
    .filter(([, cells]) => lowest(cells).covered < PROMISED)
    .map(([name, cells]) => `${name}: ${place(lowest(cells))}`),
  ...(rejects < 0.03 || rejects > 0.06 ? [`permutation rejects ${(rejects * 100).toFixed(1)} %`] : []),
];

const error = (p: number, repeats: number) => (100 * Math.sqrt((p * (1 - p)) / repeats)).toFixed(2);

const page = `# Coverage of the intervals, simulated

Written by \`npm run coverage-simulation\`; the seeds are fixed, so the same code writes the same page. Values are per cent of simulated samples
whose 95 % interval holds the truth, in brackets with every segment taken as another patient. Promised: each at least ${PROMISED * 100} %.
"1 to 4" means that patients have 1, 2, 3 and 4 segments in turn. The numbers are chosen by us (common practice, no source).

## The mean (CR2, Satterthwaite), normal values
${REPEATS} samples a cell (simulation error ${error(0.95, REPEATS)}). Lowest: ${place(lowest(mean))}.

${table(mean)}

## The difference of two means, 3 patients against 20 (CR2, Satterthwaite)
${REPEATS} samples a cell (simulation error ${error(0.95, REPEATS)}). Lowest: ${place(lowest(difference))}.

${table(difference)}

## The share of segments (Wilson on the effective number), p = 0.3
${REPEATS} samples a cell (simulation error ${error(0.95, REPEATS)}). Lowest: ${place(lowest(share))}.

${table(share)}

### Beside: p = 0.1 and p = 0.5, where nothing is promised
A share of few patients takes few values, so coverage jumps with p instead of staying near 95 %, whatever the method: with 4 patients of one segment
each and p = 0.5, none or all have the event in 1 sample of 8, and an interval from 0 (or to 1) that reached 0.5 would have to be as wide as half the scale.
With one segment each the coverage is exactly known (binomial probabilities of the counts whose interval holds p):
${[0.1, 0.3, 0.5].map((p) => `- p = ${p}: ${exactCoverage(p)} patients`).join("\n")}

With a high ICC every patient is all or nothing, so the same happens to more segments. A rare event adds another miss: one or two events, each in
another patient, don't show that segments of a patient go together (the design effect comes out near 1), n* stays near n, and the upper limit can fall
below p. That is what lowers 20 patients of 3 or 4 segments at p = 0.1.
${beside.map(({ p, cells }) => `\n#### p = ${p}\n${REPEATS_BESIDE} samples a cell (simulation error ${error(0.95, REPEATS_BESIDE)}). Lowest: ${place(lowest(cells))}.\n\n${table(cells)}`).join("\n")}

## A limit of agreement (REML, information of the deviation, CR2 of the bias), normal values
${REPEATS_BESIDE} samples a cell (simulation error ${error(0.95, REPEATS_BESIDE)}). Lowest: ${place(lowest(limit))}.

${table(limit)}

## The permutation test, 8 against 16 patients of unlike numbers of segments
Equal means; how often p ≤ 0.05, promised 3 to 6 per cent: ${(rejects * 100).toFixed(1)} % of ${REPEATS_PERMUTATION * sizes.length} samples (simulation error ${error(0.05, REPEATS_PERMUTATION * sizes.length)});
by ICC ${sizes.map(({ icc, rejects: own }) => `${icc}: ${(own * 100).toFixed(1)} %`).join(", ")} (${REPEATS_PERMUTATION} samples each, error ${error(0.05, REPEATS_PERMUTATION)}).
`;

writeFileSync(new URL("../../docs/methods-coverage.md", import.meta.url), page);
console.log(`docs/methods-coverage.md written in ${seconds.toFixed(0)} s`);
for (const miss of failed) console.error(`promise not kept: ${miss}`);
process.exitCode = failed.length > 0 ? 1 : 0;
