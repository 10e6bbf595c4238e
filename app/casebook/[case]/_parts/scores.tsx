import type { CaseAnswer } from "@/lib/answers";
import { codeWords, numberWords, sentence } from "../../_words";

type Scores = CaseAnswer["scores"];

/** Scores by code, a column a moment would be too wide for a phone: a row a score, its days along it. */
export function Scores({ scores }: { readonly scores: Scores }) {
  if (scores.length === 0) return null;
  const codes = [...new Set(scores.map(({ code }) => code))];
  return (
    <section aria-labelledby="scores">
      <h2 id="scores">Scores</h2>
      <dl className="scores">
        {codes.map((code) => (
          <div key={code}>
            <dt>{sentence(codeWords(code))}</dt>
            <dd className="number">{listOf(scores.filter((score) => score.code === code))}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}

function listOf(scores: Scores): string {
  return scores.map(({ day, value }) => `${numberWords(value)}${day === null ? "" : ` (day ${numberWords(day)})`}`).join(", ");
}
