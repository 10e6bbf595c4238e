"use client";

import { type FormEvent, useState } from "react";
import { passphraseMinimum } from "@/lib/intake";
import { Field } from "./field";

type Props = { readonly button: string; readonly take: (passphrase: string) => void };

/** A passphrase typed twice, long enough and the same. */
export function NewPassphrase({ button, take }: Props) {
  const [passphrase, setPassphrase] = useState("");
  const [again, setAgain] = useState("");
  const [faults, setFaults] = useState<readonly [string, string]>(["", ""]);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const found = faultsOf(passphrase, again);
    setFaults(found);
    if (found.every((fault) => fault === "")) take(passphrase);
  };
  return (
    <form onSubmit={submit} className="fields sans" noValidate>
      <Field
        label="Passphrase"
        type="password"
        autoComplete="new-password"
        value={passphrase}
        onChange={setPassphrase}
        fault={faults[0]}
        hint={`At least ${passphraseMinimum} characters: four or five unrelated words, say.`}
      />
      <Field label="The same once more" type="password" autoComplete="new-password" value={again} onChange={setAgain} fault={faults[1]} />
      <button type="submit" className="first">
        {button}
      </button>
    </form>
  );
}

function faultsOf(passphrase: string, again: string): readonly [string, string] {
  const length = [...passphrase.normalize("NFKC")].length;
  if (length < passphraseMinimum) return [`${passphraseMinimum} characters at least; these are ${length}.`, ""];
  return ["", passphrase === again ? "" : "The two are not the same."];
}
