import type { Field, Value } from "@/lib/codebook";
import { codeWords } from "../../_words";

type Props = { readonly id: string; readonly field: Field; readonly held: Value };

/** What a field takes: one of its codes, yes or no, or a number; blank where it may be blank. */
export function ValueInput(props: Props) {
  const { field } = props;
  if (field.kind === "code") return <Choice {...props} codes={field.codes} />;
  return field.kind === "flag" ? <Choice {...props} codes={["yes", "no"]} /> : <NumberLine {...props} />;
}

function Choice({ id, field, held, codes }: Props & { readonly codes: readonly string[] }) {
  const before = typeof held === "boolean" ? yesNo(held) : String(held ?? "");
  return (
    <select id={id} name="value" defaultValue={before} autoComplete="off">
      {field.required ? null : <option value="">blank: not recorded</option>}
      {codes.map((code) => (
        <option key={code} value={code}>
          {codeWords(code)}
        </option>
      ))}
    </select>
  );
}

const yesNo = (value: boolean) => (value ? "yes" : "no");

function NumberLine({ id, field, held }: Props) {
  // what isn't a number stays in the browser: somebody may type a name into the wrong line
  const whole = field.kind !== "number";
  const hints = [unitWords(field), field.required ? "" : "empty clears it"].filter((hint) => hint !== "");
  return (
    <>
      <input
        id={id}
        name="value"
        inputMode="decimal"
        pattern={whole ? "\\s*(-|−)?\\d{1,9}\\s*" : "\\s*(-|−)?\\d{1,9}([.,]\\d{1,6})?\\s*"}
        title={whole ? "A whole number" : "A number"}
        defaultValue={String(held ?? "")}
        autoComplete="off"
        maxLength={20}
        required={field.required === true}
      />{" "}
      {hints.join("; ")}
    </>
  );
}

function unitWords(field: Field): string {
  if (field.kind === "day") return "days from surgery";
  return field.kind === "number" && field.unit !== "points" ? field.unit : "";
}
