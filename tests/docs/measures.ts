import { measureList } from "@/lib/answers";
import { definitionSentence, ownIndex } from "@/lib/outcomes";
import { type NoteCode, noteCodes, noteText, type SituationName } from "@/lib/stats";

/** docs/measures.md: what can be asked, what a situation gets and where, and what is said beside it. */
export function measuresPage(): string {
  return `${[opening, measures(), own, landmark, equalGain, situations(), notes()].join("\n\n")}\n`;
}

const opening = `# Measures and what is said of them

Written by \`npm run docs\` from the code; a test compares it byte by byte. For audit and research; not for deciding one patient's treatment.
How each method computes, and its answers beside those from outside, stands in [methods](methods.md).`;

function measures(): string {
  const rows = measureList().map(({ id, of, unit, definition }) => [`\`${id}\``, of, unit, definition]);
  return `## Measures

\`npm run -s lengthbook -- measure ID\`. A bare id answers with its usual moment: \`proportion-…\` with \`.change\`, \`stature-z\` and \`stature-centile\` with \`.after\`, \`motion-…\` with \`.lost\`. \`score-change.CODE\` and \`score-responders.CODE\` are those of one score of the unit's list; bare they answer each score held, and a comparison takes the only one held or asks for the code.

${table(["id", "of", "unit", "what it is"], rows)}`;
}

const example = ownIndex({
  id: "own-regenerate",
  name: "Regenerate index",
  from: "distraction-end",
  to: "consolidation",
  criterion: "three-of-four",
  per: "gainMm",
  rescue: "counted",
  unit: "days/cm",
});

const own = `## Indices of a unit's own

A unit adds an index to the list \`indices\` of its settings (\`settings --set F\`), and asks for it by its id as for any other, at the command line and on the pages; conditions (\`{"own-regenerate":{"from":30}}\`) and splits (\`own-regenerate:30/60\`) name it too:

\`\`\`json
{ "indices": [{ "id": "own-regenerate", "name": "Regenerate index", "from": "distraction-end", "to": "consolidation", "criterion": "three-of-four", "per": "gainMm", "rescue": "counted", "unit": "days/cm" }] }
\`\`\`

It reads: ${definitionSentence(example)}.

${table(
  ["part", "what it may be"],
  [
    ["`id`", "`own-` and small letters, digits or hyphens; each once"],
    ["`name`", "letters, digits and blanks, at most sixty"],
    ["`from`", "`surgery`, `distraction-start`, `distraction-end`"],
    ["`to`", "`distraction-end`, `consolidation`, `full-weight-bearing`, `fixator-removal`, `end-of-treatment`; not the same as `from`"],
    [
      "`criterion`",
      "a code of `consolidationCriterion`: bones healed by another are left out as `other-criterion`; `null`: any. Only of clocks that end with healing",
    ],
    ["`per`", "`gainMm`, `gainFinalMm`, `plannedGainMm`, `plannedGainFinalMm`"],
    ["`rescue`", "`counted`: healing however obtained; `competing`: a rescue operation ends the attempt"],
    ["`unit`", "`days/cm`, or `mm/day` of a clock that ends with distraction"],
  ],
)}

A changed index is a batch of settings like any other: a result reference answers by the definition that held when it was given.`;

const landmark = `## A landmark day

What is known only after surgery (the gain reached, a changed plan) can't split or adjust a clock that started at surgery: who healed early could not
come into every group. With \`--landmark DAYS\` a clock of healing starts that many days after surgery, over bones that were lengthened by then and on that
day neither healed nor ended, nor past their last film; the others are left out as \`not-at-landmark\`. What the end of distraction tells is then known.
What is known later still (at last follow-up) gives no adjusted estimate at any landmark.`;

const equalGain = `## When a difference at equal gain is said to be shown

Days at equal gain are compared twice: as a ratio, log(days) = α + β·log(cm) + group, and on straight lines, days = a + b·cm + group, both over the
healed and clustered by patient. A ratio can't hold a line with days that don't depend on gain; where gains of the groups hardly overlap it then finds a
difference between two groups on one and the same line. Straight lines can't hold a spread that grows with the days. So a difference is said to be shown only
where both intervals leave *no difference* out, and the note \`scales-disagree\` stands where only one does. This errs towards saying none: it asks for two
intervals at once and never finds more than either. A p value, where asked for, is that of the ratio, and goes into Holm's rule as such; adjusted estimates are
ratios alone.`;

/** What each row of the dispatcher is for, and where an answer gets it. */
const reached: Readonly<Record<SituationName, readonly [situation: string, gets: string, where: string]>> = {
  mean: ["one mean", "bone-weighted mean, CR2; mean of patients beside", "`measure`"],
  median: [
    "median, all observed",
    "type 7; patient bootstrap, of 500 patients or more Woodruff's interval; of one value a patient order statistics",
    "`measure`, and `stats patient-bootstrap`, `woodruff-interval`, `median-interval`",
  ],
  "ratio-of-sums": ["all days over all centimetres", "linearised by patient", "`measure` of an index"],
  "two-means": ["two means", "CR2 difference, or within patients; smallest difference that could have been shown", "`compare`"],
  "several-means": [
    "three groups or more",
    "each against all others, HTZ over all",
    "`compare --between FIELD=A,B,C`; side by side, all groups of a field",
  ],
  "healing-compared": [
    "healing of two groups",
    "ratio of days at equal gain; log-normal time model where many are unhealed",
    "`compare` of an index",
  ],
  "healing-curve": [
    "share healed by day",
    "Kaplan–Meier, log-log limits by patient; robust score by patient between groups; Turnbull between films where none ended unhealed",
    "`outcome healing-curve`, with `--test`, `--films between`",
  ],
  "median-index": [
    "median index with unhealed bones",
    "bounds; time model at the median gain, its fit as a q–q figure",
    "`measure` of an index; `outcome days-at-equal-gain`",
  ],
  competing: [
    "healing where bones end unhealed",
    "Aalen–Johansen by patient; between groups Gray's test, with one bone a patient",
    "`outcome healing-curve`, with `--test`; `compare complication-incidence --test`; `measure complication-incidence` takes the same curve with a jackknife",
  ],
  "share-of-patients": ["share of patients", "Wilson", "`measure complication-patients-with-any` takes Wilson by itself"],
  "share-of-segments": ["share of segments", "Wilson on the effective number", "`measure` of a share takes it by itself"],
  "two-shares": [
    "two shares",
    "risk difference (Newcombe on effective numbers) and risk ratio; odds ratio with Firth's penalty where a cell is zero",
    "`compare` of a share",
  ],
  rate: ["events over exposure", "linearised by patient on the log scale", "`measure` of a rate takes it by itself"],
  "two-rates": ["two rates", "rate ratio, CR2; exact where a group has no event", "`compare` of a rate"],
  "ordered-class": ["heaviest classes", "counts of patients; permuted trend", "`compare complication-worst --test`"],
  agreement: ["two classes of one event", "weighted kappa with its cross-table", "`complications`"],
  adjusted: [
    "shares and rates adjusted",
    "risk difference and ratio, rate ratio, CR2",
    "`compare --adjust`; healing is adjusted within its own row",
  ],
  "gain-error": [
    "gain against the plan",
    "bias, share within tolerance, limits of agreement with their intervals",
    "`outcome gain-against-plan`",
  ],
};

function situations(): string {
  return `## What a situation gets, and where

Not reached by any page or command but \`stats\`: the time model with healing between films. Series in print, rates over time and funnels are no part of this version.

${table(
  ["situation", "what it gets", "where"],
  Object.values(reached).map((row) => [...row]),
)}`;
}

/** Letters stand for the numbers that a note gives. */
const facts = {
  patients: "P",
  needed: "N",
  df: "D",
  censored: "C",
  n: "N",
  missing: "M",
  smallest: "S",
  unhealed: "U",
  deff: "E",
  columns: "K",
  allowed: "A",
};

function notes(): string {
  const rows = noteCodes.map((code: NoteCode) => [
    `\`${code}\``,
    noteText({ code, ...facts, because: "why", field: "A field", what: "what" }),
  ]);
  return `## Notes

A note is \`{ code, text }\`. Capitals stand for numbers.

${table(["code", "text"], [...rows, ["`from-memory`", "From memory in this scheme: what. (Of complication schemes whose rule could not be read in its source.)"]])}`;
}

function table(heads: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;
  return [line(heads), line(heads.map(() => "---")), ...rows.map(line)].join("\n");
}
