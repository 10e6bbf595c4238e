import { GoOn } from "./go-on";
import type { PartProps } from "./letter";
import { NewKey } from "./new-key";
import { OpenKey } from "./open-key";
import { RecoveryCode } from "./recovery-code";

/** The key: made at the first file, opened ever after. */
export function KeyPart({ store, state, goTo, goUpTo }: PartProps) {
  const { key, door } = state;
  if (key.is === "open" && key.recoveryCode !== null)
    return <RecoveryCode store={store} code={key.recoveryCode} done={() => goUpTo("understood")} />;
  if (key.is === "open")
    return (
      <>
        <p>
          {key.how === "made"
            ? "The key is in this tab. The registry gets its sealed form with the first batch; until then it is nowhere else, and its recovery code is good for nothing."
            : "The key is open in this tab, and shut again when the tab is closed. It is sent nowhere."}
        </p>
        <GoOn from="key" state={state} goTo={goTo} />
      </>
    );
  if (door === null)
    return state.trouble === null ? (
      <p className="muted">Asking the registry whether it has a key.</p>
    ) : (
      <AskAgain ask={() => store.askDoor()} />
    );
  return door.hasKey ? <OpenKey store={store} done={() => goUpTo("understood")} /> : <NewKey store={store} />;
}

function AskAgain({ ask }: { readonly ask: () => Promise<void> }) {
  return (
    <p className="doings sans">
      <button type="button" onClick={() => void ask()}>
        Ask the registry again
      </button>
    </p>
  );
}
