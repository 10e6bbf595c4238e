import { fieldOf, fieldsOf, labelOfCode, type Value } from "@/lib/codebook";
import type { CodedEvent } from "@/lib/intake";

type Props = { readonly event: CodedEvent; readonly change: (event: CodedEvent | null) => void };

const usual = ["handling", "sequela", "purpose"] as const;
const flags = ["planned", "planChanged", "resolved", "goalMissed", "lifeOrLimbThreat", "death"] as const;

/** An event that was coded: when it began, how it was handled, and the rest of what can be coded of it. */
export function CodedEventLine({ event, change }: Props) {
  const label = labelOfCode(event.eventType);
  const values = event.values ?? {};
  const set = (field: string, value: Value) => change({ ...event, values: { ...values, [field]: value } });
  return (
    <li className="event sans">
      <fieldset>
        <legend>{label}</legend>
        <Onset event={event} change={change} />
        <Coded field="handling" values={values} set={set} />
        <details>
          <summary>More of it</summary>
          {usual.slice(1).map((field) => (
            <Coded key={field} field={field} values={values} set={set} />
          ))}
          {flags.map((field) => (
            <label key={field} className="flag">
              <input type="checkbox" checked={values[field] === true} onChange={({ target }) => set(field, target.checked ? true : null)} />{" "}
              {fieldOf("event", field).label}
            </label>
          ))}
        </details>
        <button type="button" className="as-link" onClick={() => change(null)}>
          Take out<span className="only-heard"> {label}</span>
        </button>
      </fieldset>
    </li>
  );
}

function Onset({ event, change }: Props) {
  const onset = event.onset ?? null;
  const days = onset !== null && "daysAfterSurgery" in onset ? String(onset.daysAfterSurgery) : "";
  const date = onset !== null && "date" in onset ? dateText(onset.date) : "";
  const withOnset = (to: CodedEvent["onset"]) => change({ ...event, onset: to ?? null });
  return (
    <div className="onset">
      <label>
        Days after surgery{" "}
        <input
          type="number"
          inputMode="numeric"
          min={0}
          max={36_500}
          value={days}
          onChange={({ target }) => withOnset(target.value === "" ? null : { daysAfterSurgery: Math.round(Number(target.value)) })}
        />
      </label>
      <label>
        or date <input type="date" value={date} onChange={({ target }) => withOnset(dateOf(target.value))} />
      </label>
    </div>
  );
}

function dateOf(text: string): CodedEvent["onset"] {
  const [year, month, day] = text.split("-").map(Number);
  return year && month && day ? { date: { year, month, day } } : null;
}

function dateText({ year, month, day }: { readonly year: number; readonly month: number; readonly day: number }): string {
  return `${String(year).padStart(4, "0")}-${String(month).padStart(2, "0")}-${String(day).padStart(2, "0")}`;
}

type CodedProps = {
  readonly field: string;
  readonly values: Readonly<Record<string, Value>>;
  readonly set: (field: string, value: Value) => void;
};

function Coded({ field, values, set }: CodedProps) {
  const known = fieldsOf("event").find(([id]) => id === field)?.[1];
  if (known?.kind !== "code") return null;
  return (
    <label>
      {known.label}{" "}
      <select value={String(values[field] ?? "")} onChange={({ target }) => set(field, target.value || null)} autoComplete="off">
        <option value="">not said</option>
        {known.codes.map((code) => (
          <option key={code} value={code}>
            {labelOfCode(code)}
          </option>
        ))}
      </select>
    </label>
  );
}
