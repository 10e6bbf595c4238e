/** A question of the clerk's: how it is walked from Today, a step each, and the lines that answer it too. */
export type ClerkAsked = {
  readonly id: string;
  readonly question: string;
  readonly walk: readonly string[];
  readonly lines: readonly (readonly string[])[];
  /** What the command line leaves to the tab, or what else there is to know. */
  readonly beside?: string;
};

export const sheet = "demo-data/raw-one-sheet.csv";
const check: readonly string[] = [
  "intake",
  sheet,
  "--mapping",
  "demo-data/raw-one-sheet.mapping.json",
  "--passphrase-file",
  "demo-data/passphrase.txt",
  "--check-only",
];
const drop = "drop the sheet, with its mapping where one was saved";
const key = "open the unit’s key";

export const clerkQuestions: readonly ClerkAsked[] = [
  {
    id: "C1",
    question: "Which rows were refused, why, and what exactly do I type to mend each?",
    walk: ["Today: which rows stay out, and what mends each", drop, key],
    lines: [[...check, "--refused", "rows-set-aside.csv"]],
    beside: "The rows set aside are saved beside the sheet with their reasons; mended and brought again, nothing is counted twice.",
  },
  {
    id: "C2",
    question: "Which columns will not be kept, and does any hold something we need coded?",
    walk: ["Today: which columns are left out", drop, key],
    lines: [check],
  },
  {
    id: "C3",
    question: "Is anything in this file (cell, header, file name) a name, number or birth date of a person, staff included?",
    walk: ["Today: whether a person is named in it", drop, key],
    lines: [check],
    beside: "A header that names a person is told at the command line as `column N`: what is printed may end in a log.",
  },
  {
    id: "C4",
    question: "What changed since last month’s sheet, field by field, what is new, what vanished?",
    walk: ["Today: what is new, changed or gone since the last one", drop, key],
    lines: [check],
  },
  {
    id: "C5",
    question: "Which cases have no consolidation day though 12 months are past, and what was the last film?",
    walk: ["Today: no consolidation day though 12 months are past"],
    lines: [["casebook", "--list", "not-healed-at-12-months"]],
  },
  {
    id: "C6",
    question: "Whose 6-month films are missing (on my own list, in my tab only)?",
    walk: ["Today: films missing at 6 months", "open Whose is this?", key, "drop the unit’s own list"],
    lines: [["casebook", "--list", "film-missing-6-months"]],
    beside: "The command line names cases by number only; who they are is told in the tab.",
  },
  {
    id: "C7",
    question: "Are these two numbers one patient, and how do I join or part them?",
    walk: [
      "Today: whose a number is, and whether two are one patient’s",
      key,
      "type both numbers and look them up",
      "join them, or part them",
    ],
    lines: [
      ["join", "--numbers-file", "two-numbers.txt", "--passphrase-file", "demo-data/passphrase.txt"],
      ["part", "CASE"],
    ],
    beside: "Two that are one patient already are said to be, and parted there; the case’s own page parts them too.",
  },
  {
    id: "C8",
    question: "Which comments have I not coded, which segments stand as “events not collected”?",
    walk: ["Today: which comments aren’t coded", drop, key],
    lines: [check, ["casebook", "--list", "events-not-collected"]],
    beside: "The segments are one step from Today: under *Work for the clerk*, *Show them*.",
  },
  {
    id: "C9",
    question: "How complete are knee motion, alignment and scores before surgery, this audit year against last?",
    walk: ["Today: how complete the records are, year by year"],
    lines: [["completeness"]],
  },
  {
    id: "C10",
    question: "I brought the wrong file: how do I get yesterday back, and who will see that I did?",
    walk: ["Today, last batches: Take batch back", "take it back"],
    lines: [["batches"], ["undo", "BATCH"]],
    beside: "The taking back is a batch of its own: it stands in the list of Today for everyone, and can be taken back itself.",
  },
];

/** The page of the docs. */
export function clerkQuestionsPage(): string {
  const parts = clerkQuestions.map(({ id, question, walk, lines, beside }) =>
    [
      `## ${id}\n\n${question}\n`,
      `${walk.map((step, i) => `${i + 1}. ${step}`).join("\n")}\n`,
      `\`\`\`sh\n${lines.map((line) => `npm run -s lengthbook -- ${line.join(" ")}`).join("\n")}\n\`\`\`\n`,
      ...(beside ? [`${beside}\n`] : []),
    ].join("\n"),
  );
  return [
    "# The clerk’s questions, walked\n",
    "Written by `npm run docs`; a test walks each from Today, counts its steps and compares what the page shows with what the command line answers.\n",
    ...parts,
  ].join("\n");
}
