import { makeKey } from "./doings";
import { NewPassphrase } from "./new-passphrase";
import type { IntakeStore } from "./store";

/** The first time: what the key is for, what is lost with it, and the passphrase under which it is sealed. */
export function NewKey({ store }: { readonly store: IntakeStore }) {
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
      <NewPassphrase button="Make the key" take={(passphrase) => void makeKey(store, passphrase)} />
    </>
  );
}
