import type { Mapping } from "@/lib/intake";
import type { View } from "../_talk/view";
import { sayMapping } from "./doings";
import type { IntakeStore } from "./store";

/** What holds for all columns: the order in dates and the decimal mark, as the file proves them or as the person said. */
export function SaidOfTheFile({ store, view }: { readonly store: IntakeStore; readonly view: View }) {
  const { dates, decimal, values } = store.state.said.mapping;
  const spellings = Object.entries(values).flatMap(([field, words]) =>
    Object.entries(words).map(([text, code]) => ({ field, text, code })),
  );
  const proved = view.dates === null ? "as the file shows" : `as the file shows (${dateWords[view.dates]})`;
  return (
    <div className="fields sans row">
      <label>
        Dates{" "}
        <select
          value={dates ?? ""}
          onChange={(event) => sayMapping(store, { dates: (event.target.value || null) as Mapping["dates"] })}
          autoComplete="off"
        >
          <option value="">{proved}</option>
          {Object.entries(dateWords).map(([order, words]) => (
            <option key={order} value={order}>
              {words}
            </option>
          ))}
        </select>
      </label>
      <label>
        Decimals{" "}
        <select
          value={decimal ?? ""}
          onChange={(event) => sayMapping(store, { decimal: (event.target.value || null) as Mapping["decimal"] })}
          autoComplete="off"
        >
          <option value="">as the file shows</option>
          <option value=",">after a comma</option>
          <option value=".">after a point</option>
        </select>
      </label>
      {spellings.length === 0 ? null : <Spellings store={store} spellings={spellings} />}
    </div>
  );
}

const dateWords = { dmy: "day first", mdy: "month first", ymd: "year first" } as const;

type Spelling = { readonly field: string; readonly text: string; readonly code: string };

function Spellings({ store, spellings }: { readonly store: IntakeStore; readonly spellings: readonly Spelling[] }) {
  const forget = ({ field, text }: Spelling) => {
    const { values } = store.state.said.mapping;
    const { [text]: _, ...others } = values[field] ?? {};
    sayMapping(store, { values: { ...values, [field]: others } });
  };
  return (
    <details>
      <summary>Words of your own ({spellings.length})</summary>
      <ul className="plain">
        {spellings.map((one) => (
          <li key={`${one.field} ${one.text}`}>
            “{one.text}” is {one.code === "" ? "not recorded" : one.code}{" "}
            <button type="button" className="as-link" onClick={() => forget(one)}>
              Ask again<span className="only-heard"> about {one.text}</span>
            </button>
          </li>
        ))}
      </ul>
    </details>
  );
}
