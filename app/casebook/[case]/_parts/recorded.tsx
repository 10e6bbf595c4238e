import type { Held } from "@/lib/answers";
import { valueWords } from "../../_words";

type Props = {
  readonly title: string;
  readonly table: "person" | "segment";
  readonly entity: number;
  readonly recorded: readonly Held[];
  readonly folded?: boolean;
};

/** All that is recorded of a row, a line a field. */
export function Recorded({ title, table, entity, recorded, folded = false }: Props) {
  const list = (
    <dl className="recorded">
      {recorded.map((held) => (
        <div key={held.field}>
          <dt>{held.label}</dt>
          <dd className="number">{valueWords(held, held.value)}</dd>
        </div>
      ))}
    </dl>
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
