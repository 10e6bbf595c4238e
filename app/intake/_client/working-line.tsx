"use client";

import { useEffect, useState } from "react";
import { grouped } from "@/lib/charts";
import type { Pace } from "../_talk/messages";
import type { Working } from "./state";
import type { IntakeStore } from "./store";

const words: Readonly<Record<Pace["step"], string>> = {
  arrive: "Opening the file",
  held: "Bringing down what is held",
  read: "Reading rows",
  key: "Making pseudonyms",
  strip: "Stripping rows",
  check: "Checking rows",
  compare: "Comparing rows with each other and with what is held",
  send: "Making the stripped rows ready",
  take: "Sending the stripped rows",
  write: "The registry writes the rows",
  seal: "The registry works out the batch’s content hash",
};
const atFirst: Readonly<Record<Working["what"], string>> = {
  arrive: "Opening the file",
  key: "Working on the key",
  prepare: "Working through the file",
  commit: "Sending the stripped rows, and waiting for the registry to write them",
};
const patienceMs = 300;

type Props = { readonly store: IntakeStore; readonly working: Working | null; readonly trouble: string | null };

/** What is being done and how far it is, once it lasts; and what went wrong. */
export function WorkingLine({ store, working, trouble }: Props) {
  const lasts = useLasting(working !== null);
  if (trouble !== null && working === null)
    return (
      <p className="said warm sans" role="alert">
        {trouble}
      </p>
    );
  if (working === null || !lasts) return null;
  const { what, pace } = working;
  // what is done so far isn't counted while the next step hasn't been heard of
  const counted = pace === null || pace.of < 2 || (what === "commit" && pace.done >= pace.of) ? null : pace;
  const said = pace === null || (counted === null && what === "commit") ? atFirst[what] : words[pace.step];
  return (
    <div className="working sans">
      <label>
        {said} {counted === null ? null : <span className="number muted">{paceWords(counted)}</span>}
        <progress {...(counted === null ? {} : { value: counted.done, max: counted.of })} />
      </label>
      <button type="button" onClick={() => store.stop()}>
        Stop
      </button>
    </div>
  );
}

/** What is on its way is counted in bytes, all else in rows. */
function paceWords({ step, done, of }: Pace): string {
  const words = (n: number) => (step === "take" ? (n / 1e6).toFixed(1) : grouped(n));
  return `${words(done)} of ${words(of)}${step === "take" ? " MB" : ""}`;
}

/** Work that is over sooner than the eye takes it in isn't shown at all. */
function useLasting(works: boolean): boolean {
  const [lasts, setLasts] = useState(false);
  useEffect(() => {
    if (!works) {
      setLasts(false);
      return;
    }
    const timer = setTimeout(() => setLasts(true), patienceMs);
    return () => clearTimeout(timer);
  }, [works]);
  return lasts;
}
