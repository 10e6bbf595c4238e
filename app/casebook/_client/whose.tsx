"use client";

import { useEffect, useState } from "react";
import { useWhose } from "./use-whose";
import { WhoseFoundList } from "./whose-found";
import { WhoseMarks } from "./whose-marks";
import { WhoseNumbers } from "./whose-numbers";
import { WhoseOpen } from "./whose-open";
import { WhosePair } from "./whose-pair";

/** An address that ends so has the part open. */
const whosePart = "whose";

/** *Whose is this?* Asked and answered in the tab: what is typed is sent nowhere, and forgotten with the page. */
export function Whose({ only = null }: { readonly only?: number | null }) {
  const { state, ask, forget } = useWhose();
  const [isAble, setAble] = useState(true);
  const [isOpen, setOpen] = useState(false);
  useEffect(() => {
    setAble(window.isSecureContext);
    setOpen(window.location.hash === `#${whosePart}`);
  }, []);
  return (
    <details id={whosePart} className="whose-part not-printed" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className="sans">Whose is this?</summary>
      <p>
        Type local numbers, or drop the unit’s own list: this tab works out which case is whom. For that the pseudonyms of the cases come
        down to it, and the unit’s key is opened in it. Nothing that you type or drop is sent or kept; it is forgotten when you leave the
        page.
      </p>
      {isAble ? null : <p className="said warm">A browser opens the key on localhost and https only.</p>}
      {state.units === null ? (
        <WhoseOpen ask={ask} busy={state.busy} />
      ) : (
        <WhoseNumbers ask={ask} forget={forget} busy={state.busy} units={state.units} />
      )}
      <p role="alert" className="said warm" hidden={state.fault === ""}>
        {state.fault}
      </p>
      {state.found === null ? null : <WhoseFoundList found={state.found} from={state.from} only={only} />}
      {state.found === null ? null : <WhosePair found={state.found} ask={ask} busy={state.busy} />}
      {state.found === null ? null : <WhoseMarks found={state.found} />}
    </details>
  );
}
