import { counted, listed } from "@/lib/charts";
import { TakeBack } from "./receipt-shown";

export type KeptBatch = { readonly batch: number; readonly counts: Readonly<Record<string, number>> };

const nouns: Readonly<Record<string, string>> = {
  persons: "patient",
  bodyMeasures: "body measure",
  segments: "segment",
  visits: "visit",
  events: "event",
  scores: "score",
};

/** The receipt of a batch that this tab kept before it was loaded anew: the ledger still says what came in. */
export function KeptEarlier({ kept: { batch, counts } }: { readonly kept: KeptBatch }) {
  const parts = Object.entries(nouns).flatMap(([name, noun]) => ((counts[name] ?? 0) > 0 ? [counted(counts[name] ?? 0, noun)] : []));
  return (
    <div className="said sans">
      <p>
        Batch {batch} was kept: {listed(parts)}, new or changed.
      </p>
      <TakeBack batch={batch} />
    </div>
  );
}
