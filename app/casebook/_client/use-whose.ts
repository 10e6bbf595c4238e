"use client";

import { useEffect, useRef, useState } from "react";
import type { WhoseAnswer, WhoseAsked, WhoseFound } from "../_whose/talk";

export type WhoseState = {
  /** The units of the registry once the key is open; `null`: shut. */
  readonly units: readonly string[] | null;
  readonly found: readonly WhoseFound[] | null;
  readonly from: string;
  readonly busy: boolean;
  readonly fault: string;
};

const shut: WhoseState = { units: null, found: null, from: "", busy: false, fault: "" };

function after(state: WhoseState, answer: WhoseAnswer): WhoseState {
  const still = { ...state, busy: false, fault: "" };
  if ("opened" in answer) return { ...still, units: answer.opened.units };
  // the page is asked anew, so that it shows the two as one
  if ("joined" in answer) window.location.assign(`/casebook/${answer.joined.case}?joined=${answer.joined.batch}`);
  if ("joined" in answer) return { ...still, busy: true };
  if ("found" in answer) return { ...still, found: answer.found, from: answer.from };
  return { ...still, fault: "notOpened" in answer ? answer.notOpened : answer.failed };
}

/** The worker in which the key is opened and numbers become pseudonyms; it ends with the page, and all that it knows with it. */
export function useWhose(): { readonly state: WhoseState; readonly ask: (asked: WhoseAsked) => void; readonly forget: () => void } {
  const worker = useRef<Worker | null>(null);
  const [state, setState] = useState(shut);
  useEffect(() => () => worker.current?.terminate(), []);
  const ask = (asked: WhoseAsked) => {
    if (worker.current === null) {
      worker.current = new Worker(new URL("../whose.worker.ts", import.meta.url), { type: "module" });
      worker.current.onmessage = ({ data }: MessageEvent<WhoseAnswer>) => setState((before) => after(before, data));
    }
    setState((before) => ({ ...before, busy: true, fault: "" }));
    worker.current.postMessage(asked);
  };
  const forget = () => {
    worker.current?.terminate();
    worker.current = null;
    setState(shut);
  };
  return { state, ask, forget };
}
