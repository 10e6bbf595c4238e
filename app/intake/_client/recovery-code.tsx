"use client";

import { useState } from "react";
import type { IntakeStore } from "./store";

const roles = [
  "Head of the unit",
  "Deputy head of the unit",
  "Data steward",
  "Audit lead",
  "Research nurse",
  "Ward or theatre manager",
  "Unit’s secretary",
  "Information governance officer",
];

type Props = { readonly store: IntakeStore; readonly code: string; readonly done: () => void };

/** The recovery code, shown this once, on a sheet to print with the two who keep it. The roles stand on the paper and nowhere else. */
export function RecoveryCode({ store, code, done }: Props) {
  const [keepers, setKeepers] = useState<readonly [string, string]>(["", ""]);
  const [first, second] = keepers;
  const named = first !== "" && second !== "" && first !== second;
  const putAway = () => {
    store.set({ key: { is: "open", how: "made", recoveryCode: null } });
    done();
  };
  return (
    <>
      <div className="code-sheet">
        <h3>Recovery code of the unit’s key</h3>
        <p>
          <code className="recovery">{code}</code>
        </p>
        <p>
          It opens the key when the passphrase is lost. It is shown this once and kept nowhere. It is good from the first batch on: if this
          tab is closed before, a new key is made, with a new code, and this sheet can be torn up.
        </p>
        <div className="fields sans">
          <Keeper label="First keeper, by role" value={first} onChange={(role) => setKeepers([role, second])} />
          <Keeper label="Second keeper, by role" value={second} onChange={(role) => setKeepers([first, role])} />
        </div>
        <p className="only-printed">Keep it locked away, and apart from the passphrase.</p>
      </div>
      <div className="doings sans">
        <button type="button" className="first" onClick={() => window.print()}>
          Print this sheet
        </button>
        <button type="button" disabled={!named} onClick={putAway}>
          It is put away: go on
        </button>
        {named ? null : (
          <span className="muted">
            {first !== "" && first === second
              ? "Two keepers, not one twice: someone must find it when the other is gone."
              : "Say who keeps it: two roles, no names."}
          </span>
        )}
      </div>
    </>
  );
}

type KeeperProps = { readonly label: string; readonly value: string; readonly onChange: (role: string) => void };

function Keeper({ label, value, onChange }: KeeperProps) {
  return (
    <div className="field">
      <label>
        {label}
        <select value={value} onChange={(event) => onChange(event.target.value)} autoComplete="off">
          <option value="">choose a role</option>
          {roles.map((role) => (
            <option key={role}>{role}</option>
          ))}
        </select>
      </label>
    </div>
  );
}
