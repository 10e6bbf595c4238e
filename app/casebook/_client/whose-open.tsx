"use client";

import { type FormEvent, useId, useState } from "react";
import type { WhoseAsked } from "../_whose/talk";

type Props = { readonly ask: (asked: WhoseAsked) => void; readonly busy: boolean };

export function WhoseOpen({ ask, busy }: Props) {
  const id = useId();
  const [passphrase, setPassphrase] = useState("");
  const submit = (event: FormEvent) => {
    event.preventDefault();
    ask({ open: { passphrase, search: window.location.pathname === "/casebook" ? window.location.search : "" } });
    setPassphrase("");
  };
  return (
    <form onSubmit={submit} className="whose-form sans" noValidate>
      <label htmlFor={id}>Passphrase of the unit’s key</label>
      <input
        id={id}
        type="password"
        autoComplete="current-password"
        value={passphrase}
        onChange={(event) => setPassphrase(event.target.value)}
      />
      <button type="submit" disabled={busy || passphrase === ""}>
        {busy ? "Opening" : "Open the key"}
      </button>
    </form>
  );
}
