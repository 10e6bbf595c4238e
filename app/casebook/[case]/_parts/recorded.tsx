import type { CaseAnswer, Held } from "@/lib/answers";
import { isCorrectable } from "@/lib/registry";
import { valueWords } from "../../_words";
import { ByHand } from "./by-hand";
import { CorrectLink } from "./correct-link";

type Props = {
  readonly answer: CaseAnswer;
  readonly title: string;
  readonly table: "person" | "segment";
  readonly entity: number;
  readonly recorded: readonly Held[];
  readonly folded?: boolean;
};

/** All that is recorded of a row, a line a field. */
export function Recorded({ answer, title, table, entity, recorded, folded = false }: Props) {
  const list = (
    <>
      <dl className="recorded">
        {recorded.map((held) => (
          <div key={held.field}>
            <dt>{held.label}</dt>
            <dd className="number">
              <ByHand answer={answer} table={table} entity={entity} field={held.field} /> {valueWords(held, held.value)}{" "}
              {isCorrectable(table, held.field) ? (
                <CorrectLink number={answer.case} table={table} entity={entity} field={held.field} label={held.label} />
              ) : null}
            </dd>
          </div>
        ))}
      </dl>
      <p className="sans not-printed">
        <CorrectLink number={answer.case} table={table} entity={entity} label={`another field: ${title}`} /> a field that isn’t recorded
      </p>
    </>
  );
  if (folded)
    return (
      <details>
        <summary>{title}</summary>
        {list}
      </details>
    );
  const id = `recorded-${table}-${entity}`;
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{title}</h2>
      {list}
    </section>
  );
}
