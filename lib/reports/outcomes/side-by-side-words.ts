import { type CaseMixAnswer, type CompareAnswer, type Difference, type FamilyMember, isShown, onStraightLines } from "@/lib/answers";
import { counted, decimals, grouped, listed, noValue, type ShownUnit, shownInterval, shownText, shownUnit, withUnit } from "@/lib/charts";

export type Named = { readonly labels: ReadonlyMap<string, string>; readonly test: boolean };

const ratioUnit: ShownUnit = { name: "", perRecord: 1, digits: 2, valueDigits: 2 };
export const percentUnit: ShownUnit = { name: "%", perRecord: 100, digits: 1, valueDigits: 1 };

/** Of a difference: in which unit it is read. Risk differences are points of a hundred. */
export function unitOfDifference({ kind, what }: Difference): ShownUnit {
  if (kind === "ratio") return ratioUnit;
  if (what === onStraightLines) return shownUnit("days");
  return what === "risk difference" ? percentUnit : shownUnit(what.replace(/^mean /, ""));
}

/** Fields that differ by more than a fifth of their spread: called unlike, as in the figure. */
export const unlikeFrom = 0.2;

export function balanceText({ sides: [a, b], balance }: CaseMixAnswer): string {
  const known = balance.filter(({ smd }) => smd !== null);
  const unlike = known.filter(({ smd }) => Math.abs(smd ?? 0) > unlikeFrom).sort((x, y) => Math.abs(y.smd ?? 0) - Math.abs(x.smd ?? 0));
  const who = `${sideText(a)} beside ${sideText(b)}`;
  if (known.length === 0) return `${who}: nothing recorded tells whether the groups were alike to begin with.`;
  if (unlike.length === 0) return `${who}: alike to begin with in all ${known.length} fields that can be compared.`;
  const names = listed(unlike.slice(0, 4).map(({ label, smd }) => `${label.toLowerCase()} (${decimals(Math.abs(smd ?? 0), 2)})`));
  const more = unlike.length > 4 ? `, and ${unlike.length - 4} more` : "";
  return `${who}: unlike to begin with in ${unlike.length} of ${known.length} fields, most in ${names}${more}.`;
}

function sideText({ words, segments, patients }: CaseMixAnswer["sides"][number]): string {
  return `${words} (${counted(segments, "segment")} in ${counted(patients, "patient")})`;
}

/** What an outcome says: crude, then adjusted where that was asked, and what these groups could have shown. */
export function memberText({ crude, adjusted, holm }: FamilyMember, named: Named): string {
  const { title } = crude.definition;
  const [lead] = crude.differences;
  if (!lead || lead.estimate === null) return `${title}: ${unestimatedText(crude, holm)}.`;
  const [a, b] = crude.sides;
  const lines = crude.differences.find(({ what }) => what === onStraightLines) ?? null;
  const parts = [`${title}, ${differenceText(lead, a.words, b.words, lines)}`];
  if (lines) parts.push(`on straight lines ${limitsText(lines)}`);
  const [index] = crude.differences.filter(({ kind, what }) => kind === "difference" && what !== onStraightLines);
  if (lead.kind === "ratio" && index && index.estimate !== null)
    parts.push(`the index by itself, of the healed alone, differs by ${limitsText(index)}`);
  const unhealed = lead.kind === "ratio" ? unhealedText(crude) : null;
  if (unhealed !== null) parts.push(unhealed);
  if (adjusted) parts.push(adjustedText(adjusted.differences[0], named));
  const could = lead.detectable === null ? index : lead;
  if (could && could.detectable !== null) {
    const unit = unitOfDifference(could);
    parts.push(`groups like these could have shown a ${could.kind} of ${withUnit(shownText(could.detectable, unit), unit)}`);
  }
  if (named.test) parts.push(ownPText(lead, lines, pText(adjusted?.differences[0]?.p ?? lead.p, holm)));
  return `${parts.join("; ")}.`;
}

/** The p is the ratio’s; where the straight lines show no difference, it must not read as one. */
function ownPText(lead: Difference, lines: Difference | null, p: string): string {
  return lines && isShown(lead) && !isShown(lines) ? `of the ratio by itself ${p}, which the straight lines don’t bear out` : p;
}

/** Curves and classes have a test at most; of everything else too few are there. */
function unestimatedText({ differences: [lead], groups }: CompareAnswer, holm: number | null): string {
  const byNature = groups.some((group) => "curve" in group || hasClassesAlone(group));
  if (!byNature) return "the two groups can’t be compared: too few on one side";
  const none = "no difference between the groups is estimated, their values stand below";
  return lead === undefined ? none : `${none}; ${lead.what}: ${pText(lead.p, holm)}`;
}

/** Whether a group answers with how many patients had which class as their worst, and no more. */
export function hasClassesAlone(group: CompareAnswer["groups"][number]): boolean {
  return "classes" in group && !("share" in group) && !("rate" in group);
}

/** Whom an index of the healed leaves out, and days at equal gain have in. */
function unhealedText({ groups, sides }: CompareAnswer): string | null {
  const said = groups.flatMap((group, i) => {
    if (!("healed" in group) || group.healed === undefined) return [];
    const { healed, censored = 0, ended = 0 } = group;
    return [`${grouped(censored)} of ${grouped(healed + censored + ended)} (${sides[i === 0 ? 0 : 1].words})`];
  });
  return said.length < 2 ? null : `the unhealed, ${listed(said)}, are in the days at equal gain up to their last film`;
}

/** `1.12 times as many days …`; an interval that holds *no difference* is said to show none. */
function differenceText(difference: Difference, a: string, b: string, lines: Difference | null): string {
  const { lower } = difference;
  // where the ratio and the straight lines disagree, neither shows a difference by itself
  const shown = isShown(difference) && (lines === null || isShown(lines));
  const form = difference.kind === "ratio" ? `${difference.what}, ${a} over ${b}` : `${difference.what}, ${a} less ${b}`;
  const verdict = lower === null ? "; too few patients for an interval" : shown ? "" : ", so no difference is shown";
  return `${form}: ${limitsText(difference)}${verdict}`;
}

export function limitsText(difference: Difference): string {
  const unit = unitOfDifference(difference);
  if (difference.estimate === null) return "no estimate";
  return `${withUnit(shownText(difference.estimate, unit), unit)} (${shownInterval(difference, unit) ?? "no interval"})`;
}

function adjustedText(difference: Difference | undefined, { labels }: Named): string {
  if (!difference || difference.estimate === null) return "no adjusted estimate is given";
  const fields = difference.adjustedFor.map((field) => (labels.get(field) ?? field).toLowerCase());
  return `adjusted for ${listed(fields)}: ${limitsText(difference)}`;
}

export function pText(p: number | null, holm: number | null): string {
  if (p === null) return "no p";
  return holm === null || holm === p ? `p ${pWords(p)}` : `p ${pWords(p)}, by Holm ${pWords(holm)}`;
}

/** `0.031`, `below 0.001`. */
export function pWords(p: number): string {
  return p < 0.001 ? "below 0.001" : decimals(p, 3);
}

/** Over how many p values Holm's rule went; one alone needs none. */
export function holmText({ tested, ticked }: { readonly tested: number; readonly ticked: number }): string | null {
  return tested < 2 ? null : `Holm’s rule goes over ${tested} p values, of the ${ticked} outcomes ticked.`;
}

/** A split was chosen among others; how many were looked at tells how far to trust it. */
export function splitsText({ splitsLookedAt: n }: Pick<CompareAnswer, "splitsLookedAt">): string {
  return n === 1
    ? "This is the only split of this cohort that was looked at."
    : `${n} splits of this cohort were looked at, this one among them.`;
}

/** The estimate alone, its interval alone, and what groups like these could have shown: a cell each. */
export function estimateText(difference: Difference): string {
  return difference.estimate === null ? noValue : (limitsText(difference).split(" (")[0] ?? noValue);
}

export function intervalText(difference: Difference): string {
  return shownInterval(difference, unitOfDifference(difference))?.replace("95 % CI ", "") ?? noValue;
}

export function detectableText(difference: Difference): string {
  if (difference.detectable === null) return noValue;
  const unit = unitOfDifference(difference);
  return withUnit(shownText(difference.detectable, unit), unit);
}
