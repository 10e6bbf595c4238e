/** A question that a user asks first, and where the answer stands: a page's address and a line of the command line. */
export type Asked = {
  readonly id: string;
  readonly question: string;
  /** Address of the page that answers, from Today; `null` where only the command line does yet. */
  readonly page: string | null;
  readonly line: readonly string[];
  /** What a person does from Today until the answer stands there. */
  readonly steps: readonly Step[];
};

/** One thing that a person does: follow a link, change a word of a sentence, unfold a table, or tick several and ask. */
export type Step =
  | { readonly follow: string; readonly in?: "Pages" | "Outcomes" }
  | { readonly choose: string; readonly as: string }
  | { readonly unfold: string }
  | { readonly tick: readonly string[] };

const outcomes: Step = { follow: "Outcomes", in: "Pages" };
const cohorts: Step = { follow: "Cohorts", in: "Pages" };
const place = (name: string): Step => ({ follow: name, in: "Outcomes" });

const json = (where: unknown) => JSON.stringify(where);
const asked = (where: unknown) => encodeURIComponent(JSON.stringify(where));
const statureBothSides = { indication: ["stature"], arrangement: { missing: false }, not: { arrangement: ["one-side"] } };

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
    steps: [cohorts, { follow: "antegrade-femoral-nails-one-year" }, { follow: "healing" }],
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
    steps: [outcomes, { choose: "Split by", as: "arrangement" }],
    line: ["measure", "surgery-to-consolidation", "--by", "arrangement"],
  },
  {
    id: "F3",
    question: "How many were unhealed or needed bone surgery to heal, and what is the time with them in?",
    page: "/outcomes/healing-curve",
    steps: [outcomes, place("Curve")],
    line: ["measure", "time-to-consolidation"],
  },
  {
    id: "F4",
    question:
      "Transverse against oblique osteotomy, adjusted for gain, age, smoking and site: difference with interval, and how many splits did I look at?",
    page: "/outcomes/side-by-side?field=osteotomyOrientation&measure=surgery-to-consolidation&adjust=ageAtSurgeryYears&adjust=smoking&adjust=osteotomySite",
    steps: [
      outcomes,
      place("Side by side"),
      { choose: "Field", as: "osteotomyOrientation" },
      { tick: ["age at surgery", "smoking", "osteotomy site"] },
    ],
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
    steps: [outcomes, place("Complications"), { choose: "Scheme", as: "problem-obstacle" }],
    line: ["complications", "--scheme", "problem-obstacle"],
  },
  {
    id: "F6",
    question: "How many unplanned operations a segment, by reason and phase, planned removals apart?",
    page: "/outcomes/complications",
    steps: [outcomes, place("Complications")],
    line: ["measure", "operations-per-segment"],
  },
  {
    id: "F7",
    question:
      "Tibia to femur and sitting-height ratio before and after bilateral stature lengthening, at what gain, on how many measured rather than derived?",
    page: `/outcomes/proportion?where=${asked(statureBothSides)}`,
    steps: [cohorts, { follow: "short stature, both sides" }, { follow: "proportion" }],
    line: ["measure", "proportion-tibia-femur.change", "--cohort", json(statureBothSides)],
  },
  {
    id: "F8",
    question: "Knee flexion and ankle dorsiflexion lost at 3, 6 and 12 months, seen and due at each?",
    page: "/outcomes/motion",
    steps: [outcomes, place("Motion")],
    line: ["measure", "motion-knee-flexion.lost-at-6-months"],
  },
  {
    id: "F9",
    question: "The flow from registry to analysed with reasons, the lost beside the seen, and who may not be used for research?",
    page: `/cohorts?where=${asked({ permittedUse: ["research-with-consent", "research-by-approval"] })}`,
    steps: [cohorts, { follow: "who may be used for research" }, { follow: "follow-up" }],
    line: ["cohort", "show", json({ permittedUse: ["research-with-consent", "research-by-approval"] })],
  },
  {
    id: "K3",
    question: "Goal within 10 mm this audit year and last, with interval; who stopped early, and why?",
    page: "/outcomes/gain-against-plan?tolerance=10&by=auditYear",
    steps: [outcomes, place("Plan"), { choose: "Tolerance", as: "10" }, { choose: "Split by", as: "auditYear" }],
    line: ["measure", "gain-within-10mm", "--by", "auditYear"],
  },
  {
    id: "K4",
    question: "Unplanned return to theatre, cumulative to 12 months, nails against frames, pin sites in and out?",
    page: "/outcomes/incidence?by=deviceKind&pins=left-out",
    steps: [outcomes, place("Incidence"), { choose: "Split by", as: "deviceKind" }, { choose: "Pin-site infections", as: "left-out" }],
    line: ["measure", "complication-return-to-theatre", "--by", "deviceKind", "--without-pin-sites"],
  },
  {
    id: "K5",
    question: "Nerve deficits: how many, which phase, prior release or not, recovered by 12 months?",
    page: "/outcomes/complications?by=releasePeronealNerve",
    steps: [
      outcomes,
      place("Complications"),
      { choose: "Split by", as: "releasePeronealNerve" },
      { unfold: "When events began, and what came of them" },
    ],
    line: ["complications", "--by", "releasePeronealNerve"],
  },
  {
    id: "K6",
    question: "Is our quick healing only because the unhealed are left out, or because our gains are larger?",
    page: `/outcomes/side-by-side?b=monolateral-fixator&where=${asked({ bone: ["femur"] })}`,
    steps: [cohorts, { follow: "femora" }, { follow: "side by side" }, { choose: "Second group", as: "monolateral-fixator" }],
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
    steps: [cohorts, { follow: "femora" }, { follow: "alignment" }, { choose: "Split by", as: "entry" }],
    line: ["measure", "alignment-axis-per-cm", "--by", "entry", "--cohort", json({ bone: ["femur"] })],
  },
  {
    id: "K8",
    question: "Did stature patients get the height planned, legs equal, proportions kept, function back?",
    page: `/outcomes/stature?measure=stature-gain-error&where=${asked(statureBothSides)}`,
    steps: [cohorts, { follow: "short stature, both sides" }, { follow: "stature" }, { choose: "Measure", as: "stature-gain-error" }],
    line: ["measure", "stature-gain-error", "--cohort", json(statureBothSides)],
  },
  {
    id: "K9",
    question: "All segments with stainless-steel nails: how many, osteolysis or corrosion recorded, out or still in, last film when?",
    page: `/outcomes/complications?where=${asked({ nailMaterial: ["stainless-steel"] })}`,
    steps: [cohorts, { follow: "steel-nails" }, { follow: "complications" }],
    line: ["complications", "--cohort", json({ nailMaterial: ["stainless-steel"] })],
  },
];

/** The page of the docs. */
export function questionsPage(): string {
  const rows = questions.map(
    ({ id, question, page, line, steps }) =>
      `## ${id}\n\n${question}\n\nFrom Today in ${steps.length} steps: ${steps.map(stepWords).join(", ")}.\n\n${pageLine(page)}\`\`\`sh\nnpm run -s lengthbook -- ${line.map(quoted).join(" ")}\n\`\`\`\n`,
  );
  return [
    "# Questions and their lines\n",
    "Written by `npm run docs`; tests take the steps, open each page and run each line on the demo registry. Pages show the same records.\n",
    ...rows,
  ].join("\n");
}

function stepWords(step: Step): string {
  if ("follow" in step) return `follow *${step.follow}*`;
  if ("choose" in step) return `choose *${step.choose}*: \`${step.as}\``;
  if ("unfold" in step) return `unfold *${step.unfold}*`;
  return `tick *${step.tick.join("*, *")}* and ask`;
}

/** The page that answers, as an address after that of the registry. */
function pageLine(page: string | null): string {
  return page === null ? "" : `Page: \`${page}\`\n\n`;
}

function quoted(word: string): string {
  return /[{"[ ]/.test(word) ? `'${word}'` : word;
}
