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
  const { column, settledBy, finding } = asked;
  const title = questionWords(asked);
  return (
    <li className="asked">
      <section aria-label={title}>
        <h4>{title}</h4>
        <p className="sans muted">
          {column === null ? "" : `${column}: `}found {finding.found}. {finding.mend}
        </p>
        <Samples asked={asked} />
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

function Samples({ asked: { settledBy, samples, firstRows, rows } }: Pick<Props, "asked">) {
  if (settledBy === "values")
    return (
      <p className="sans number muted">
        {rows === 1 ? "Row" : "Rows"} {firstRows.slice(0, 3).join(", ")}
        {rows > 3 ? ` and ${rows - 3} more` : ""}
      </p>
    );
  return (
    <ul className="plain cells sans number">
      {samples.map(({ row, cell }) => (
        <li key={row}>
          <span className="muted">row {row}</span> {cell}
        </li>
      ))}
    </ul>
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

const mostButtons = 8;

function ValueChoice({ store, asked, answered }: Props) {
  const field = asked.field?.split(".")[0] ?? "";
  const options = codeOptions(field, asked.choices);
  const say = (code: string) => {
    const { values } = store.state.said.mapping;
    sayMapping(store, { values: { ...values, [field]: { ...values[field], [asked.spelling?.text ?? ""]: code } } });
    answered();
  };
  const few = options.length <= mostButtons;
  return (
    <>
      {few ? null : <Choose label="It means" options={options} onChoose={say} />}
      <p className="doings sans">
        {few
          ? options.map(({ id, label }) => (
              <button key={id} type="button" onClick={() => say(id)}>
                {label}
              </button>
            ))
          : null}
        <button type="button" className="as-link" onClick={() => say("")}>
          It means “not recorded”
        </button>
      </p>
    </>
  );
}

function codeOptions(id: string, choices: readonly string[]): readonly Option[] {
  const field = tableNames.flatMap((table) => fieldsOf(table)).find(([name]) => name === id)?.[1];
  const codes = choices.length > 0 ? choices : field?.kind === "code" ? field.codes : [];
  return codes.map((code) => ({ id: code, label: labelOfCode(code), group: "", words: code }));
}
