"use client";

import { useSearchParams } from "next/navigation";
import { useCallback, useEffect, useRef, useState, useSyncExternalStore } from "react";
import { prepare } from "./doings";
import { DropAnywhere } from "./drop-anywhere";
import { type KeptBatch, KeptEarlier } from "./kept-earlier";
import { Letter } from "./letter";
import { NotAble } from "./not-able";
import { openStep, type Step, stepOf, steps } from "./steps";
import { IntakeStore, startState } from "./store";
import { WarnOfLeaving } from "./warn-of-leaving";

type Props = { readonly kept: KeptBatch | null };

/** The page on which a file comes in: a letter being prepared, whose parts can be gone through back and forth. */
export function Intake({ kept }: Props) {
  const [store] = useState(() => new IntakeStore());
  const state = useSyncExternalStore(store.subscribe, store.read, () => startState);
  const wanted = stepOf(useSearchParams().get("step"));
  const open = openStep(wanted, state);
  const goTo = useCallback((step: Step) => window.history.pushState(null, "", `?step=${step}`), []);
  const goUpTo = (step: Step) => {
    if (steps.indexOf(wanted) < steps.indexOf(step)) goTo(step);
  };
  const reloaded = useRef(wanted !== "arrived");

  useEffect(() => {
    store.start();
    return () => store.end();
  }, [store]);
  const mayPrepare = state.stale && state.key.is === "open" && state.key.recoveryCode === null && open !== "comments" && open !== "arrived";
  useEffect(() => {
    if (mayPrepare && state.arrived.some(({ sheets }) => sheets.length > 0)) void prepare(store);
  }, [mayPrepare, state.arrived, store]);

  if (state.able === false) return <NotAble />;
  const empty = state.arrived.length === 0;
  return (
    <>
      {kept !== null && state.receipt === null && empty ? <KeptEarlier kept={kept} /> : null}
      <DropAnywhere store={store} />
      <WarnOfLeaving when={!empty && state.receipt === null} />
      <Letter
        store={store}
        state={state}
        open={open}
        goTo={goTo}
        goUpTo={goUpTo}
        busy={mayPrepare || state.working !== null}
        goesOnAt={empty && reloaded.current && kept === null ? wanted : null}
      />
    </>
  );
}
