import { prepare } from "./doings";
import type { IntakeState } from "./state";
import type { IntakeStore } from "./store";

/** The file hasn’t been worked through: it is being, or was stopped. */
export function NotYet({ store, state }: { readonly store: IntakeStore; readonly state: IntakeState }) {
  if (state.working !== null || state.stale) return <p className="muted">The file is being worked through.</p>;
  return (
    <p className="doings sans">
      <button type="button" className="first" onClick={() => void prepare(store)}>
        Work through the file
      </button>
    </p>
  );
}
