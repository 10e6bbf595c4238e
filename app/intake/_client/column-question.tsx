import { fieldsOf, labelOfCode, tableNames } from "@/lib/codebook";
import type { Mapping } from "@/lib/intake";
import type { Asked } from "../_talk/view";
import { Choose, type Option } from "./choose";
import { sayColumn, sayMapping } from "./doings";
import { labelOfField } from "./field-options";
import type { IntakeStore } from "./store";
import { answerWords } from "./words";

type Props = { readonly store: IntakeStore; readonly asked: Asked; readonly answered: () => void };

/** A question that no file can settle: asked with three of its cells, answered once. */
export function ColumnQuestion({ store, asked, answered }: Props) {
  const { column, settledBy, samples, finding } = asked;
  const title = questionWords(asked);
  return (
    <li className="asked">
      <section aria-label={title}>
        <h4>{title}</h4>
        <p className="sans muted">
          {column === null ? "" : `${column}: `}found {finding.found}. {finding.mend}
        </p>
        {samples.length === 0 ? null : (
          <ul className="plain cells sans number">
            {samples.map(({ row, cell }) => (
              <li key={row}>
                <span className="muted">row {row}</span> {cell}
              </li>
            ))}
          </ul>
        )}
        {settledBy === "values" ? (
          <ValueChoice store={store} asked={asked} answered={answered} />
        ) : (
          <p className="doings sans">
            {asked.choices.map((choice) => (
              <button
                key={choice}
                type="button"
                onClick={() => {
                  settle(store, asked, choice);
                  answered();
                }}
              >
                {choiceWords(asked, choice)}
              </button>
            ))}
          </p>
        )}
      </section>
    </li>
  );
}

function questionWords({ code, column, field, spelling, rows }: Asked): string {
  const name = field === null ? "" : labelOfField(field).toLowerCase();
  switch (code) {
    case "date-order-unknown":
      return "Which comes first in a date: the day or the month?";
    case "decimal-mark-unknown":
      return `Which mark stands before the decimals in “${column}”?`;
    case "unit-unknown":
      return `In which unit does “${column}” stand?`;
    case "two-columns-one-field":
      return `Is “${column}” the column for ${name}?`;
    case "value-unknown":
      return `What does “${spelling?.text ?? ""}” mean in “${column}” (${rows === 1 ? "one row" : `${rows} rows`})?`;
    default:
      return labelOfCode(code);
  }
}

function choiceWords({ settledBy }: Asked, choice: string): string {
  if (settledBy === "columns") return choice === "null" ? "No: leave it out" : "Yes, this one";
  return answerWords[choice] ?? labelOfCode(choice);
}

function settle(store: IntakeStore, { settledBy, column, field }: Asked, choice: string): void {
  const { mapping } = store.state.said;
  if (settledBy === "dates") sayMapping(store, { dates: choice as Mapping["dates"] });
  else if (settledBy === "decimal") sayMapping(store, { decimal: choice as Mapping["decimal"] });
  else if (settledBy === "units" && column !== null)
    sayMapping(store, { units: { ...mapping.units, [column]: choice as Mapping["units"][string] } });
  else if (settledBy === "columns" && column !== null && field !== null) chooseColumn(store, column, field, choice);
}

/** Of several columns for one field, the one chosen fills it and the others are left out. */
function chooseColumn(store: IntakeStore, column: string, field: string, choice: string): void {
  if (choice === "null") {
    sayColumn(store, column, null);
    return;
  }
  const rivals = (store.state.view?.sheets ?? []).flatMap(({ columns }) =>
    columns.filter((other) => other.field === field && other.header !== column).map(({ header }) => [header, null] as const),
  );
  sayMapping(store, { columns: { ...store.state.said.mapping.columns, ...Object.fromEntries(rivals), [column]: field } });
}

function ValueChoice({ store, asked, answered }: Props) {
  const field = asked.field ?? "";
  const say = (code: string) => {
    const { values } = store.state.said.mapping;
    const bare = field.split(".")[0] ?? field;
    sayMapping(store, { values: { ...values, [bare]: { ...values[bare], [asked.spelling?.text ?? ""]: code } } });
    answered();
  };
  return (
    <>
      <Choose label="It means" options={codeOptions(field, asked.choices)} onChoose={say} />
      <p className="doings sans">
        <button type="button" onClick={() => say("")}>
          It means “not recorded”
        </button>
      </p>
    </>
  );
}

function codeOptions(id: string, choices: readonly string[]): readonly Option[] {
  const bare = id.split(".")[0] ?? id;
  const field = tableNames.flatMap((table) => fieldsOf(table)).find(([name]) => name === bare)?.[1];
  const codes = choices.length > 0 ? choices : field?.kind === "code" ? field.codes : [];
  return codes.map((code) => ({ id: code, label: labelOfCode(code), group: "", words: code }));
}
