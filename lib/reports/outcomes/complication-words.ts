import type { MatrixAnswer, MeasureAnswer, MeasureGroup } from "@/lib/answers";
import { counted, decimals, grouped, listed, shareText, shownInterval } from "@/lib/charts";
import { byGroup } from "../words/by-group";
import { classWords } from "../words/code-words";
import { nobodyIn } from "../words/nobody";

/** Below this many patients nothing is estimated, so a share is no end of a range either. */
const leastPatients = 3;

type Answers = ReadonlyMap<string, MeasureAnswer>;

/** How many patients had any, how many events that was over what, and what nobody looked for. */
export function complicationSentences(matrix: MatrixAnswer, answers: Answers): readonly string[] {
  const patients = answers.get("complication-patients-with-any");
  if (!patients || nobodyIn(matrix.groups)) return ["No segment in this cohort."];
  const looked = patients.groups.filter(({ n }) => n > 0);
  if (looked.length === 0)
    return ["Nobody’s events were looked for in this cohort, so there is nothing to count: not looked for is not none."];
  const any = byGroup(looked, {
    text: ({ share }) => (share ? shareText(share) : "not known"),
    rank: ({ share }) => ((share?.patients ?? 0) < leastPatients ? null : (share?.estimate ?? null)),
    lowest: "the lowest share",
    highest: "the highest",
  });
  return [`Patients with any event: ${any}.`, eventsText(answers), worstText(answers.get("complication-worst")), lookedText(matrix)].filter(
    (text) => text !== null,
  );
}

function eventsText(answers: Answers): string | null {
  const [perSegment, per10cm] = ["complication-events-per-segment", "complication-events-per-10cm"].map(
    (id) => answers.get(id)?.groups ?? [],
  );
  const [only] = perSegment ?? [];
  if (!only || perSegment?.length !== 1) return null;
  const further = per10cm?.[0]?.rate ? `, ${rateText(per10cm[0])} per 10 cm gained` : "";
  return `${counted(only.rate?.events ?? 0, "event")} in ${counted(only.n, "segment")}: ${rateText(only)} a segment${further}.`;
}

export function rateText({ rate }: MeasureGroup): string {
  if (!rate || rate.estimate === null) return "no rate";
  const interval = shownInterval(rate, { name: "", perRecord: 1, digits: 2, valueDigits: 2 });
  return `${decimals(rate.estimate, 2)} (${interval ?? "no interval"})`;
}

function worstText(worst: MeasureAnswer | undefined): string | null {
  const [only] = worst?.groups ?? [];
  if (!only || worst?.groups.length !== 1) return null;
  const held = Object.entries(only.classes ?? {}).filter(([name, n]) => name !== "none" && n > 0);
  if (held.length === 0) return null;
  return `By the heaviest class of each patient: ${listed(held.map(([name, n]) => `${grouped(n)} ${classWords(name)}`))}.`;
}

/** What was not looked for stands beside every rate: it is not none. */
function lookedText({ groups }: MatrixAnswer): string | null {
  const not = groups.reduce((sum, { notLookedFor }) => sum + notLookedFor, 0);
  const all = groups.reduce((sum, { segments }) => sum + segments, 0);
  return not === 0 ? null : `Events were not looked for in ${grouped(not)} of ${counted(all, "segment")}; these are in no rate.`;
}
