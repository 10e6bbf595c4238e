import type {
  CaseMixAnswer,
  CompareAnswer,
  ComparedAgain,
  Difference,
  FamilyAnswer,
  HealingGroup,
  MeasureGroup,
  SeveralAnswer,
  SeveralFamilyAnswer,
} from "@/lib/answers";
import { tableText } from "../table-text";

const rounded = (value: number | null) => (value === null ? null : Number(value.toPrecision(4)));

function differencesTable(differences: readonly Difference[]): string {
  return tableText(
    ["what", "first", "second", "estimate", "95 % CI", "could have shown", "p"],
    differences.map((one) => [
      one.adjustedFor.length === 0 ? one.what : `${one.what}, adjusted for ${one.adjustedFor.join(", ")}`,
      one.a,
      one.b,
      rounded(one.estimate),
      one.lower === null ? null : `${rounded(one.lower)} to ${rounded(one.upper)}`,
      rounded(one.detectable),
      rounded(one.p),
    ]),
  );
}

type Balanced = { readonly balance: readonly { readonly field: string; readonly smd: number | null }[] };

function balanceTable({ balance }: Balanced): string {
  return tableText(
    ["case mix", "standardised difference"],
    balance.filter(({ smd }) => smd !== null).map(({ field, smd }) => [field, rounded(smd)]),
  );
}

/** What stands under every comparison: its notes, the splits looked at, its reference. */
function foot({ notes, splitsLookedAt, stamp }: Pick<CompareAnswer, "notes" | "splitsLookedAt" | "stamp">): readonly string[] {
  return [...new Set(notes.map(({ text }) => text)), `Splits of this cohort looked at: ${splitsLookedAt}. Result reference ${stamp}.`];
}

/** Two groups as a person reads them on a terminal. */
export function textOfComparison(answer: CompareAnswer): string {
  return [balanceTable(answer), "", differencesTable(answer.differences), "", ...foot(answer)].join("\n");
}

/** Three groups or more. */
export function textOfSeveral(answer: SeveralAnswer): string {
  return [balanceTable(answer), "", ...severalLines(answer)].join("\n");
}

function severalLines(answer: SeveralAnswer): readonly string[] {
  const test = answer.testMethod === null ? [] : [`Over all groups: p ${rounded(answer.p) ?? "not to be had"} (${answer.testMethod}).`];
  return [differencesTable(answer.differences), "", ...test, ...foot(answer)];
}

/** Several outcomes of the same three groups or more. */
export function textOfSeveralFamily({ members, tested }: SeveralFamilyAnswer): string {
  const [first] = members;
  const parts = members.flatMap(({ answer, holm }) => [
    `${answer.definition.title} (${answer.unit})`,
    ...severalLines(answer),
    ...(holm === null ? [] : [`p by Holm over the family: ${rounded(holm)}`]),
    "",
  ]);
  return [...(first ? [balanceTable(first.answer), ""] : []), ...parts, ...holmLine(tested)].join("\n");
}

function holmLine(tested: number): readonly string[] {
  return tested > 0 ? [`Holm’s rule went over ${tested} p values.`] : [];
}

/** Several outcomes of the same two groups. */
export function textOfFamily({ members, tested }: FamilyAnswer): string {
  const [first] = members;
  const parts = members.flatMap(({ crude, adjusted, holm }) => [
    `${crude.definition.title} (${crude.unit})`,
    differencesTable([...crude.differences, ...(adjusted?.differences ?? []).filter(({ adjustedFor }) => adjustedFor.length > 0)]),
    ...(holm === null ? [] : [`p by Holm over the family: ${rounded(holm)}`]),
    ...foot({ ...crude, notes: [...crude.notes, ...(adjusted?.notes ?? [])] }),
    "",
  ]);
  return [...(first ? [balanceTable(first.crude), ""] : []), ...parts, ...holmLine(tested)].join("\n");
}

/** A comparison, or its case mix, asked again. */
export function textOfCompared(answer: ComparedAgain): string {
  if (answer.of === "two") return textOfComparison(answer);
  return answer.of === "several" ? textOfSeveral(answer) : textOfCaseMix(answer);
}

function textOfCaseMix(answer: CaseMixAnswer): string {
  return [balanceTable(answer), "", `Result reference ${answer.stamp}.`].join("\n");
}

/** The answer without its single segments. */
export function withoutRows<A extends object>(answer: A) {
  const bare = (group: object) => Object.fromEntries(Object.entries(group).filter(([key]) => key !== "marks" && key !== "rows"));
  return "groups" in answer ? { ...answer, groups: (answer.groups as readonly (HealingGroup | MeasureGroup)[]).map(bare) } : answer;
}
