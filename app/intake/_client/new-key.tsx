"use client";

import { type FormEvent, useState } from "react";
import { passphraseMinimum } from "@/lib/intake";
import { makeKey } from "./doings";
import { Field } from "./field";
import type { IntakeStore } from "./store";

/** The first time: what the key is for, what is lost with it, and the passphrase under which it is sealed. */
export function NewKey({ store }: { readonly store: IntakeStore }) {
  const [passphrase, setPassphrase] = useState("");
  const [again, setAgain] = useState("");
  const [faults, setFaults] = useState<readonly [string, string]>(["", ""]);
  const submit = (event: FormEvent) => {
    event.preventDefault();
    const short =
      lengthOf(passphrase) < passphraseMinimum ? `${passphraseMinimum} characters at least; these are ${lengthOf(passphrase)}.` : "";
    const differs = passphrase !== again ? "The two are not the same." : "";
    setFaults([short, short === "" ? differs : ""]);
    if (short === "" && differs === "") void makeKey(store, passphrase);
  };
  return (
    <>
      <p>
        This is the registry’s first file, so the unit’s key is made now. It turns local numbers into pseudonyms, the same ones for every
        later file, so that next year’s sheet finds this year’s patients. It is made here, and kept only sealed under a passphrase of your
        own.
      </p>
      <p>
        A recovery code is shown once, to be printed and put away. <strong>If passphrase and code are both lost</strong>, what is held stays
        and can be read, and no later file can ever be joined to it: nobody can open the key for you. So two people should be able to find
        one of the two.
      </p>
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
          Make the key
        </button>
      </form>
    </>
  );
}

function lengthOf(text: string): number {
  return [...text.normalize("NFKC")].length;
}
