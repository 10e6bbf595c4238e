import type { TodayAnswer } from "@/lib/answers";
import { counted, rowWords } from "@/lib/charts";

type Kind = TodayAnswer["work"][number]["kind"];

/** What one does, and what several do. */
type Verbs = readonly [one: string, several: string];

const words: Readonly<Record<Kind, { readonly noun: string; readonly verbs: Verbs; readonly why: string; readonly mend: string }>> = {
  "healing-date-missing": {
    noun: "segment",
    verbs: ["lacks", "lack"],
    why: "the day of healing: seen or walking on it after the last film, and no consolidation day.",
    mend: "Type the consolidation day, or the last film that showed it unhealed, in your sheet and bring the sheet again. Until then they are left out of healing, and counted as left out.",
  },
  "events-not-collected": {
    noun: "segment",
    verbs: ["stands", "stand"],
    why: "as events not collected: no column of events, or comments never coded.",
    mend: "They enter no complication rate. Code their comments the next time the sheet comes in, or say that events were looked for and none found.",
  },
  "permitted-use-not-recorded": {
    noun: "patient",
    verbs: ["has", "have"],
    why: "no permission for research recorded.",
    mend: "They may be used inside the unit, and leave the house in no export.",
  },
};

/** Parts of the letter in which a file comes in, each by the question that it answers. */
const ofASheet = [
  ["findings", "which rows stay out, and what mends each"],
  ["understood", "which columns are left out"],
  ["stripped", "whether a person is named in it"],
  ["comments", "which comments aren’t coded"],
  ["kept", "what is new, changed or gone since the last one"],
] as const;

export function ClerksWork({ answer }: { readonly answer: TodayAnswer }) {
  return (
    <section aria-labelledby="work">
      <h2 id="work">Work for the clerk</h2>
      <p className="muted">As of the last file brought in. This is not a recall list.</p>
      <Waiting waiting={answer.waiting} />
      {answer.work.length === 0 ? <p>Nothing is waiting.</p> : <ul className="work">{answer.work.map(workItem)}</ul>}
      <h3>Lists of what is held</h3>
      <ul className="plain">
        <li>
          <a href="/casebook?list=not-healed-at-12-months">no consolidation day though 12 months are past</a>
        </li>
        <li>
          films missing at <a href="/casebook?list=film-missing-3-months">3</a>, <a href="/casebook?list=film-missing-6-months">6</a>,{" "}
          <a href="/casebook?list=film-missing-12-months">12</a> and <a href="/casebook?list=film-missing-24-months">24 months</a>
        </li>
        <li>
          <a href="/casebook/completeness">how complete the records are, year by year</a>
        </li>
        <li>
          <a href="/casebook#whose">whose a number is, and whether two are one patient’s</a>{" "}
          <span className="muted">(in the tab alone)</span>
        </li>
      </ul>
      <h3>Of a sheet, before any of it is kept</h3>
      <ul className="plain">
        {ofASheet.map(([step, words]) => (
          <li key={step}>
            <a href={`/intake?step=${step}`}>{words}</a>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Rows that came before the row of their patient or segment: kept, and in no count until it comes. */
function Waiting({ waiting }: Pick<TodayAnswer, "waiting">) {
  const words = rowWords(waiting);
  const one = Object.values(waiting).reduce((sum, n) => sum + n, 0) === 1;
  if (words === "") return null;
  return (
    <p>
      <strong>{words}</strong> {one ? "waits" : "wait"} for the sheet that holds {one ? "its" : "their"} segment or patient: kept, and in no
      figure until it comes.
    </p>
  );
}

function workItem({ kind, count }: TodayAnswer["work"][number]) {
  const { noun, verbs, why, mend } = words[kind];
  return (
    <li key={kind}>
      <strong>{counted(count, noun)}</strong> {verbs[count === 1 ? 0 : 1]} {why} <span className="muted">{mend}</span>{" "}
      <a href={`/casebook?list=${kind}`}>Show them</a>
    </li>
  );
}
