import { useId } from "react";

type Props = {
  readonly label: string;
  readonly type?: "text" | "password";
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly autoComplete?: string;
  readonly hint?: string;
  readonly fault?: string;
};

/** A line to type in, with its hint and what is wrong with what was typed. */
export function Field({ label, type = "text", value, onChange, autoComplete = "off", hint = "", fault = "" }: Props) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type={type}
        value={value}
        autoComplete={autoComplete}
        spellCheck={false}
        aria-invalid={fault !== ""}
        aria-describedby={`${id}-hint`}
        onChange={(event) => onChange(event.target.value)}
      />
      <p id={`${id}-hint`} className={fault === "" ? "muted small" : "warm small"} role={fault === "" ? undefined : "alert"}>
        {fault === "" ? hint : fault}
      </p>
    </div>
  );
}
