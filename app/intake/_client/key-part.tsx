import { sealAnew } from "./doings";
import { GoOn } from "./go-on";
import { NewKey } from "./new-key";
import { NewPassphrase } from "./new-passphrase";
import { OpenKey } from "./open-key";
import type { PartProps } from "./part-props";
import { RecoveryCode } from "./recovery-code";
import type { KeyState } from "./state";

/** The key: made at the first file, opened ever after. */
export function KeyPart({ store, state, goTo, goUpTo }: PartProps) {
  const { key, door } = state;
  const done = () => goUpTo("understood");
  if (key.is === "open" && key.recoveryCode !== null) return <RecoveryCode store={store} code={key.recoveryCode} done={done} />;
  if (key.is === "open")
    return (
      <>
        <p>{openWords[key.how]}</p>
        {key.how === "recovered" ? (
          <NewPassphrase button="Seal it under this passphrase" take={(passphrase) => void sealAnew(store, passphrase)} />
        ) : null}
        <GoOn from="key" state={state} goTo={goTo} />
      </>
    );
  if (door !== null) return door.hasKey ? <OpenKey store={store} done={done} /> : <NewKey store={store} />;
  if (state.trouble === null) return <p className="muted">Asking the registry whether it has a key.</p>;
  return (
    <p className="doings sans">
      <button type="button" onClick={() => void store.askDoor()}>
        Ask the registry again
      </button>
    </p>
  );
}

const openWords: Readonly<Record<Extract<KeyState, { is: "open" }>["how"], string>> = {
  made: "The key is in this tab. The registry gets its sealed form with the first batch; until then it is nowhere else, and its recovery code is good for nothing.",
  opened: "The key is open in this tab, and shut again when the tab is closed. It is sent nowhere.",
  recovered:
    "The recovery code has opened the key. If the passphrase is lost, give the key a new one now: it holds from the commit of this file on, and the recovery code stays as it is.",
  sealed: "The key is open in this tab. Its new passphrase holds from the commit of this file on.",
};
