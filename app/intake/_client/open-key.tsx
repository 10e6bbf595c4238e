"use client";

import { type FormEvent, useState } from "react";
import { openKey } from "./doings";
import { Field } from "./field";
import type { IntakeStore } from "./store";

type Props = { readonly store: IntakeStore; readonly done: () => void };

/** The passphrase opens the key, or the recovery code does; a wrong one is told before any row is worked on. */
export function OpenKey({ store, done }: Props) {
  const [by, setBy] = useState<"passphrase" | "recovery-code">("passphrase");
  const [secret, setSecret] = useState("");
  const [fault, setFault] = useState("");
  const isCode = by === "recovery-code";
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const opened = await openKey(store, { by, secret });
    // after a recovery the key may get a new passphrase first
    if (opened === true && !isCode) done();
    if (opened === false) setFault(isCode ? wrongCode : wrongPassphrase);
  };
  const turn = () => {
    setBy(isCode ? "passphrase" : "recovery-code");
    setSecret("");
    setFault("");
  };
  return (
    <>
      <p>The registry has its key. Opened here, it gives this file’s patients the pseudonyms by which they are held.</p>
      <form onSubmit={submit} className="fields sans" noValidate>
        <Field
          key={by}
          label={isCode ? "Recovery code" : "Passphrase of the unit’s key"}
          type={isCode ? "text" : "password"}
          autoComplete={isCode ? "off" : "current-password"}
          value={secret}
          onChange={(value) => {
            setSecret(value);
            setFault("");
          }}
          fault={fault}
          hint={isCode ? "Six groups of five, as printed; dashes, blanks and small letters don’t matter." : ""}
        />
        <div className="doings">
          <button type="submit" className="first" disabled={secret === ""}>
            Open the key
          </button>
          <button type="button" className="as-link" onClick={turn}>
            {isCode ? "Use the passphrase" : "Passphrase lost? Use the recovery code"}
          </button>
        </div>
      </form>
    </>
  );
}

const wrongPassphrase =
  "This passphrase does not open the registry’s key. No row was worked on and nothing was sent. Mind capitals and the keyboard’s language.";
const wrongCode = "This code does not open the registry’s key. No row was worked on and nothing was sent.";
