import type { CaseAnswer } from "@/lib/answers";
import { type CorrectionReason, correctionReasons, type Field, fieldOf } from "@/lib/codebook";
import { valueWords } from "../../_words";
import { type CorrectAsked, correctableFields, correctName, type RowInCase, rowInCase } from "../_correct";
import { troubleWords } from "../_trouble";
import { ValueInput } from "./value-input";

type Props = { readonly answer: CaseAnswer; readonly asked: CorrectAsked; readonly trouble: string | null };

export const reasonWords: Readonly<Record<CorrectionReason, string>> = {
  "typing-error": "a slip of typing",
  "source-checked": "checked against the source",
  "measured-again": "measured again",
  "wrong-unit": "the wrong unit",
  "wrong-patient": "it was another patient’s",
  clearing: "it should be blank",
  other: "another reason",
};

/** Corrects one field: which, to what, and why, the reason a code. */
export function CorrectForm({ answer, asked, trouble }: Props) {
  const row = rowInCase(answer, asked.table, asked.entity);
  if (row === null) return null;
  return (
    <section id="correct" className="correction not-printed" aria-labelledby="correct-head">
      <h2 id="correct-head">Correct one field of {row.name}</h2>
      {trouble === null ? null : (
        <p className="said warm sans" role="alert">
          {troubleWords(trouble)} Nothing was changed.
        </p>
      )}
      {asked.field === null ? (
        <ChooseField answer={answer} asked={asked} />
      ) : (
        <ValueForm answer={answer} asked={{ ...asked, field: asked.field }} row={row} />
      )}
      <p>
        <a href={`/casebook/${answer.case}`}>Leave it as it is</a>
      </p>
    </section>
  );
}

function ChooseField({ answer, asked: { table, entity } }: Omit<Props, "trouble">) {
  return (
    <form action={`/casebook/${answer.case}`} method="get" className="sans doings">
      <label>
        Field{" "}
        <select name="correct" autoComplete="off">
          {correctableFields(table).map(([id, field]) => (
            <option key={id} value={correctName(table, entity, id)}>
              {field.label}
            </option>
          ))}
        </select>
      </label>
      <button type="submit">Choose</button>
    </form>
  );
}

type ValueProps = { readonly answer: CaseAnswer; readonly asked: CorrectAsked & { readonly field: string }; readonly row: RowInCase };

function ValueForm({ answer, asked: { table, entity, field: id }, row }: ValueProps) {
  const field = fieldOf(table, id);
  const held = row.valueOf(id);
  return (
    <form action="/casebook/correct" method="post" className="sans correct-form">
      <input type="hidden" name="case" value={answer.case} />
      <input type="hidden" name="row" value={correctName(table, entity, id)} />
      <p>
        <strong>{field.label}</strong>: held is {valueWords(shownAs(field), held)}.
      </p>
      <p>
        <label htmlFor="value">It should be</label> <ValueInput id="value" field={field} held={held} />
      </p>
      <p>
        <label htmlFor="reason">because of</label>{" "}
        <select id="reason" name="reason" defaultValue="typing-error" autoComplete="off">
          {correctionReasons.map((reason) => (
            <option key={reason} value={reason}>
              {reasonWords[reason]}
            </option>
          ))}
        </select>
      </p>
      <p className="muted small">
        It holds until your sheet says something new: a sheet that repeats the old value changes nothing, and at any other value you are
        shown both and asked. Mend the sheet too. The correction is a batch, and can be taken back.
      </p>
      <button type="submit">Correct it</button>
    </form>
  );
}

function shownAs(field: Field): { readonly kind: "code" | "flag" | "number" | "days" | "text"; readonly unit: string | null } {
  if (field.kind === "day") return { kind: "days", unit: "days" };
  if (field.kind === "number") return { kind: "number", unit: field.unit };
  return { kind: field.kind === "count" ? "number" : field.kind === "keyed" || field.kind === "listed" ? "text" : field.kind, unit: null };
}
