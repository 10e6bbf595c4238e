import type { CaseAnswer } from "@/lib/answers";
import { codeWords, numberWords, sentence } from "../../_words";
import { CorrectLink } from "./correct-link";

type Scores = CaseAnswer["scores"];

/** Scores by code, a column a moment would be too wide for a phone: a row a score, its days along it. */
export function Scores({ answer: { scores, case: number } }: { readonly answer: CaseAnswer }) {
  if (scores.length === 0) return null;
  const codes = [...new Set(scores.map(({ code }) => code))];
  return (
    <section aria-labelledby="scores">
      <h2 id="scores">Scores</h2>
      <dl className="scores">
        {codes.map((code) => (
          <div key={code}>
            <dt>{sentence(codeWords(code))}</dt>
            <dd className="number">{scores.filter((score) => score.code === code).map((score, i) => scoreItem(score, i, number))}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function scoreItem({ score, code, day, value }: Scores[number], index: number, number: number) {
  return (
    <span key={score}>
      {index === 0 ? "" : ", "}
      {numberWords(value)}
      {day === null ? "" : ` (day ${numberWords(day)})`}{" "}
      <CorrectLink
        number={number}
        table="score"
        entity={score}
        field="scoreValue"
        label={`the score ${codeWords(code)}${day === null ? "" : ` of day ${day}`}`}
      />
    </span>
  );
}
