/** A question that a user asks first, and where the answer stands: a page's address and a line of the command line. */
export type Asked = {
  readonly id: string;
  readonly question: string;
  /** Address of the page that answers, from Today; `null` where only the command line does yet. */
  readonly page: string | null;
  readonly line: readonly string[];
};

const json = (where: unknown) => JSON.stringify(where);
const asked = (where: unknown) => encodeURIComponent(JSON.stringify(where));

/** The acceptance questions of the fellow and the consultant that this version answers, each with its line. */
export const questions: readonly Asked[] = [
  {
    id: "F1",
    question:
      "With at least 12 months' follow-up: index (surgery to three of four cortices) of antegrade femoral nails: mean, SD, median, n segments and patients?",
    page: `/outcomes?where=${asked({
      bone: ["femur"],
      consolidationCriterion: ["three-of-four"],
      entry: ["piriformis", "trochanteric"],
      followUpDays: { from: 365 },
    })}`,
    line: [
      "measure",
      "surgery-to-consolidation",
      "--cohort",
      json({
        bone: ["femur"],
        entry: ["piriformis", "trochanteric"],
        followUpDays: { from: 365 },
        consolidationCriterion: ["three-of-four"],
      }),
    ],
  },
  {
    id: "F2",
    question: "How many had both sides done, under which arrangement, and what does clustering do to the interval?",
    page: "/outcomes?by=arrangement",
    line: ["measure", "surgery-to-consolidation", "--by", "arrangement"],
  },
  {
    id: "F3",
    question: "How many were unhealed or needed bone surgery to heal, and what is the time with them in?",
    page: "/outcomes/healing-curve",
    line: ["measure", "surgery-to-consolidation", "--by", "healingStatus"],
  },
  {
    id: "F4",
    question:
      "Transverse against oblique osteotomy, adjusted for gain, age, smoking and site: difference with interval, and how many splits did I look at?",
    page: "/outcomes/side-by-side?field=osteotomyOrientation&measure=surgery-to-consolidation&adjust=ageAtSurgeryYears&adjust=smoking&adjust=osteotomySite",
    line: [
      "compare",
      "surgery-to-consolidation",
      "--between",
      "osteotomyOrientation=transverse,oblique",
      "--adjust",
      "ageAtSurgeryYears,smoking,osteotomySite",
    ],
  },
  {
    id: "F5",
    question: "Worst class and all events by class, with scheme, end-of-treatment rule and denominator named?",
    page: "/outcomes/complications?scheme=problem-obstacle",
    line: ["complications", "--scheme", "problem-obstacle"],
  },
  {
    id: "F6",
    question: "How many unplanned operations a segment, by reason and phase, planned removals apart?",
    page: "/outcomes/complications",
    line: ["measure", "operations-per-segment"],
  },
  {
    id: "F7",
    question:
      "Tibia to femur and sitting-height ratio before and after bilateral stature lengthening, at what gain, on how many measured rather than derived?",
    page: `/outcomes/proportion?where=${asked({ indication: ["stature"] })}`,
    line: ["measure", "proportion-tibia-femur.change", "--cohort", json({ indication: ["stature"] })],
  },
  {
    id: "F8",
    question: "Knee flexion lost at 3, 6 and 12 months, seen and due at each?",
    page: "/outcomes/motion",
    line: ["measure", "motion-knee-flexion.lost-at-6-months"],
  },
  {
    id: "F9",
    question: "The flow from registry to analysed with reasons, and who may not be used for research?",
    page: `/cohorts?where=${asked({ permittedUse: ["research-with-consent", "research-by-approval"] })}`,
    line: [
      "cohort",
      "show",
      json({ bone: ["femur"], device: ["magnetic-nail"], permittedUse: ["research-with-consent", "research-by-approval"] }),
    ],
  },
  {
    id: "K3",
    question: "Goal within 10 mm this audit year and last, with interval?",
    page: "/outcomes/gain-against-plan?tolerance=10&by=auditYear",
    line: ["measure", "gain-within-10mm", "--by", "auditYear"],
  },
  {
    id: "K4",
    question: "Unplanned return to theatre, cumulative to 12 months, nails against frames?",
    page: "/outcomes/incidence?by=device&pins=left-out",
    line: ["measure", "complication-return-to-theatre", "--by", "device"],
  },
  {
    id: "K5",
    question: "Nerve deficits: how many, which phase, prior release or not, recovered by 12 months?",
    page: "/outcomes/complications?by=releasePeronealNerve",
    line: ["complications", "--by", "releasePeronealNerve"],
  },
  {
    id: "K6",
    question: "Is our quick healing only because the unhealed are left out, or because our gains are larger?",
    page: `/outcomes/side-by-side?b=monolateral-fixator&where=${asked({ bone: ["femur"] })}`,
    line: [
      "compare",
      "surgery-to-consolidation",
      "--between",
      "device=magnetic-nail,monolateral-fixator",
      "--cohort",
      json({ bone: ["femur"] }),
    ],
  },
  {
    id: "K7",
    question: "How far did the axis move per cm, antegrade against retrograde, and how many ended more than 10 mm outside?",
    page: `/outcomes/alignment?by=entry&where=${asked({ bone: ["femur"] })}`,
    line: ["measure", "alignment-axis-per-cm", "--by", "entry", "--cohort", json({ bone: ["femur"] })],
  },
  {
    id: "K8",
    question: "Did stature patients get the height planned, legs equal?",
    page: `/outcomes/stature?measure=stature-gain-error&where=${asked({ indication: ["stature"] })}`,
    line: ["measure", "stature-gain-error", "--cohort", json({ indication: ["stature"] })],
  },
  {
    id: "K9",
    question: "All segments with stainless-steel nails: how many, osteolysis or corrosion recorded?",
    page: `/outcomes/complications?where=${asked({ nailMaterial: ["stainless-steel"] })}`,
    line: ["complications", "--cohort", json({ nailMaterial: ["stainless-steel"] })],
  },
];

/** The page of the docs. */
export function questionsPage(): string {
  const rows = questions.map(
    ({ id, question, page, line }) =>
      `## ${id}\n\n${question}\n\n${pageLine(page)}\`\`\`sh\nnpm run -s lengthbook -- ${line.map(quoted).join(" ")}\n\`\`\`\n`,
  );
  return [
    "# Questions and their lines\n",
    "Written by `npm run docs`; a test runs each line on the demo registry. Pages show the same records.\n",
    ...rows,
  ].join("\n");
}

/** The page that answers, as an address after that of the registry. */
function pageLine(page: string | null): string {
  return page === null ? "" : `Page: \`${page}\`\n\n`;
}

function quoted(word: string): string {
  return /[{"[ ]/.test(word) ? `'${word}'` : word;
}
