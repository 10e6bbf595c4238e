import { type RowCounts, rowWords } from "@/lib/charts";
import { TakeBack } from "./receipt-shown";

export type KeptBatch = { readonly batch: number; readonly counts: RowCounts };

/** The receipt of a batch that this tab kept before it was loaded anew: the ledger still says what came in. */
export function KeptEarlier({ kept: { batch, counts } }: { readonly kept: KeptBatch }) {
  return (
    <div className="said sans">
      <p>
        Batch {batch} was kept: {rowWords(counts)}, new or changed.
      </p>
      <TakeBack batch={batch} />
    </div>
  );
}
