"use client";

import { useEffect, useState } from "react";
import type { RefusedShown, View } from "../_talk/view";
import { FindingLine } from "./finding-line";
import type { IntakeStore } from "./store";

const aTime = 50;

/** Rows set aside, each with its reasons. */
export function RefusedRows({ store, view }: { readonly store: IntakeStore; readonly view: View }) {
  const [rows, setRows] = useState<readonly RefusedShown[]>([]);
  const [from, setFrom] = useState(0);
  useEffect(() => {
    let wanted = true;
    // a new view holds other rows: they are asked for anew
    void view;
    void store.quietly("refused", { from: 0, count: from + aTime }).then((answer) => {
      if (wanted && answer) setRows(answer);
    });
    return () => {
      wanted = false;
    };
  }, [store, view, from]);
  if (view.counts.rowsRefused === 0) return <p>No row is set aside.</p>;
  return (
    <section aria-label="Rows set aside">
      {rows.map(({ file, row, reasons }) => (
        <div key={`${file} ${row}`} className="refused">
          <h3>
            Row {row}
            {view.sheets.length > 1 ? ` of ${file}` : ""}
          </h3>
          <ul className="plain findings">
            {reasons.map((finding) => (
              <FindingLine key={`${finding.code} ${finding.column} ${finding.field}`} finding={{ ...finding, row: null }} />
            ))}
          </ul>
        </div>
      ))}
      {rows.length < view.counts.rowsRefused ? (
        <p className="doings sans">
          <button type="button" onClick={() => setFrom(from + aTime)}>
            Show more
          </button>
        </p>
      ) : null}
    </section>
  );
}
