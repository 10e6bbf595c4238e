import type { TodayAnswer } from "@/lib/answers";
import { grouped } from "@/lib/charts";

type Status = TodayAnswer["statuses"][number]["status"];

const words: Readonly<Record<Status, string>> = {
  healed: "healed",
  "still-distracting": "still being lengthened",
  rescued: "had further bone surgery, not healed since",
  "ended-unhealed": "ended unhealed",
  "healing-date-missing": "healing date missing",
  "not-healed-at-last-film": "not healed at last film",
};

export function Statuses({ answer }: { readonly answer: TodayAnswer }) {
  return (
    <section aria-labelledby="healing">
      <h2 id="healing">Healing, as far as the films go</h2>
      <table className="data">
        <caption className="only-heard">Segments by healing status</caption>
        <tbody>
          {answer.statuses.map(({ status, segments }) => (
            <tr key={status}>
              <td>{grouped(segments)}</td>
              <th scope="row" className="start">
                {words[status]}
              </th>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr>
            <td>{grouped(answer.segments)}</td>
            <th scope="row" className="start muted">
              segments in all
            </th>
          </tr>
        </tfoot>
      </table>
      <p>
        <a href="/outcomes">How long healing took</a>
      </p>
    </section>
  );
}
