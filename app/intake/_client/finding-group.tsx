"use client";

import { useState } from "react";
import { counted, listed } from "@/lib/charts";
import { labelOfCode } from "@/lib/codebook";
import type { Finding } from "@/lib/intake";
import type { GroupShown } from "../_talk/view";
import { FindingLine } from "./finding-line";
import type { IntakeStore } from "./store";

type Props = { readonly store: IntakeStore; readonly group: GroupShown; readonly many: boolean; readonly isOpen?: boolean };

const aTime = 50;

/** Findings of one kind in one column: how many rows, what mending brings back, and each when it is opened. */
export function FindingGroup({ store, group, many, isOpen = false }: Props) {
  const [findings, setFindings] = useState<readonly Finding[]>([]);
  const { code, severity, column, file, rows, bringsBack, key } = group;
  const more = async () => {
    const answer = await store.quietly("findings", { group: key, from: findings.length, count: aTime });
    if (answer) setFindings([...findings, ...answer]);
  };
  return (
    <li className="group sans">
      <details
        open={isOpen || (severity === "error" && rows <= aTime)}
        onToggle={(event) => (event.currentTarget.open && findings.length === 0 ? void more() : undefined)}
      >
        <summary>
          {labelOfCode(code)}
          {column === null ? "" : ` in ${column}`}
          {many && file !== null ? ` (${file})` : ""}
        </summary>
        <ul className="plain findings">
          {findings.map((finding) => (
            <FindingLine key={`${finding.row} ${finding.field} ${finding.found}`} finding={finding} />
          ))}
        </ul>
        {findings.length > 0 && findings.length % aTime === 0 ? (
          <p className="doings">
            <button type="button" onClick={() => void more()}>
              Show more
            </button>
          </p>
        ) : null}
      </details>
      <p className="number">
        {rowsWords(group)}
        {bringsBack > 0 ? `; mended, ${counted(bringsBack, "row")} ${bringsBack === 1 ? "comes" : "come"} back in` : ""}
      </p>
    </li>
  );
}

/** `rows 3, 17, 54 and 12 more`. */
function rowsWords({ rows, firstRows, column }: GroupShown): string {
  if (firstRows.length === 0) return column === null ? "the whole file" : "the whole column";
  if (rows <= firstRows.length) return `${rows === 1 ? "row" : "rows"} ${listed(firstRows.map(String))}`;
  return `rows ${firstRows.join(", ")} and ${rows - firstRows.length} more`;
}
