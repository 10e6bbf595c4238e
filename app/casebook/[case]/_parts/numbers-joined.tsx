import type { CaseAnswer } from "@/lib/answers";
import { counted } from "@/lib/charts";
import { PartForm } from "../../_parts/part-form";

/** The numbers of the patient that were cases of their own, each with the way to part it again. */
export function NumbersJoined({ answer: { case: number, joined } }: { readonly answer: CaseAnswer }) {
  if (joined.length === 0) return null;
  return (
    <section aria-labelledby="numbers" className="not-printed">
      <h2 id="numbers">{counted(joined.length + 1, "number")} of one patient</h2>
      <ul className="plain">
        {joined.map((second) => (
          <li key={second}>
            <p>What was case {second} is read as this one: its rows, and those of later files under its number.</p>
            <details className="sans">
              <summary>They are two patients after all</summary>
              <p>Each gets its own again, with what came under its number since. That is a batch, and can be taken back.</p>
              <PartForm second={second} from={number} />
            </details>
          </li>
        ))}
      </ul>
    </section>
  );
}
