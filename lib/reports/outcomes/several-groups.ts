import { compareSeveralFamily, type SeveralAnswer, type SeveralFamilyAnswer, type SeveralFamilyQuestion } from "@/lib/answers";
import type { Registry } from "../told/question";
import type { Told } from "../told/told";
import { commandWords } from "../words/command-words";
import { leftOutOf } from "../words/left-out";
import { notesOf } from "../words/notes";
import { severalForests } from "./several-groups-forest";
import { severalBalanceTable, severalDifferencesTable, severalTestsTable } from "./several-groups-tables";
import { severalBalanceText, severalText } from "./several-groups-words";
import { valuesTable } from "./side-by-side-tables";
import { holmText, splitsText } from "./side-by-side-words";

export type SeveralGroupsQuestion = Omit<SeveralFamilyQuestion, "asOf" | "test"> & { readonly test: boolean; readonly asOf: number | null };

/** Three groups or more of a field: case mix first, then of each outcome every group's mean against that of all others. */
export async function tellSeveralGroups(registry: Registry, question: SeveralGroupsQuestion): Promise<Told> {
  const { asOf, test, ...asked } = question;
  const family = await compareSeveralFamily(registry, { ...asked, test, ...(asOf === null ? {} : { asOf }) });
  const answers = family.members.map(({ answer }) => answer);
  const [first] = answers;
  if (!first) throw new RangeError("tellSeveralGroups requires an outcome, received none");
  return {
    title: "Side by side",
    sentences: [
      severalBalanceText(first),
      ...family.members.map((member) => severalText(member, test)),
      test ? holmText({ tested: family.tested, ticked: answers.length }) : null,
      splitsText(first),
    ].filter((text) => text !== null),
    cautions: cautionsOf(answers, first.sides.length),
    figures: severalForests(answers),
    tables: [
      severalBalanceTable(first),
      valuesTable(answers),
      severalDifferencesTable(answers),
      ...(test ? [severalTestsTable(family)] : []),
    ],
    definition: answers.map(({ definition }) => `${definition.title}: ${definition.sentence}`).join(". "),
    method: methodOf(family),
    leftOut: answers.flatMap(({ definition, groups }) =>
      leftOutOf(groups).map(({ label, text }) => ({ label: answers.length === 1 ? label : `${definition.title}, ${label}`, text })),
    ),
    notes: answers.flatMap(({ definition, notes }) =>
      notesOf(notes, []).map((note) => (answers.length === 1 ? note : `${definition.title}: ${note}`)),
    ),
    references: answers.map(({ definition, stamp }) => ({ of: definition.title.toLowerCase(), stamp })),
    commands: [commandOf(question)],
    batch: first.batch,
    dataTo: first.dataTo,
  };
}

function cautionsOf(answers: readonly SeveralAnswer[], groups: number): readonly string[] {
  const unlike = answers.flatMap(({ notes }) => notes.filter(({ code }) => code === "shared-denominator"));
  const many = `Each group is held against all others, which makes ${groups} intervals of every outcome: of twenty such intervals one leaves no difference out by chance alone.`;
  return [...new Set(unlike.map(({ text }) => text)), many];
}

function methodOf({ members }: SeveralFamilyAnswer): string {
  const estimates = members.flatMap(({ answer }) => answer.differences.map(({ method }) => method));
  const tests = members.flatMap(({ answer: { testMethod } }) => testMethod ?? []);
  const holm = members.length > 1 && tests.length > 0 ? ["p values by Holm’s step-down rule over the outcomes ticked"] : [];
  return [...new Set([...estimates, ...tests, ...holm])].join("; ") || "nothing could be estimated";
}

/** The same at the command line, which takes the values as they are held. */
function commandOf({ field, values, measures, where, test, asOf }: SeveralGroupsQuestion): string {
  const more = { between: `${field}=${values.map(String).join(",")}`, test: test ? "" : null };
  return commandWords(`compare ${measures.join(",")}`, { where, by: [], asOf }, more);
}
