"use client";

import type { WhoseAsked, WhoseFound } from "../_whose/talk";

type Props = { readonly found: readonly WhoseFound[]; readonly ask: (asked: WhoseAsked) => void; readonly busy: boolean };

/** Two numbers looked up together: whether they are one case, and the way to make them one. */
export function WhosePair({ found, ask, busy }: Props) {
  const [a, b] = found;
  if (found.length !== 2 || !a || !b || a.case === null || b.case === null) return null;
  if (a.case === b.case)
    return (
      <p className="said sans">
        These two are one patient: <a href={`/casebook/${a.case}`}>case {a.case}</a>. There they can be parted.
      </p>
    );
  return (
    <div className="sans">
      <p>
        <strong>Are these two one patient?</strong> Look at <a href={`/casebook/${a.case}`}>case {a.case}</a> and{" "}
        <a href={`/casebook/${b.case}`}>case {b.case}</a> first. Joined, they are read as one, and so are later files under either number;
        of two values that differ the one brought later holds. Nothing is rewritten: they can be parted again.
      </p>
      <p className="doings">
        <JoinButton first={a} second={b} ask={ask} busy={busy} />
        <JoinButton first={b} second={a} ask={ask} busy={busy} />
      </p>
    </div>
  );
}

type JoinProps = Omit<Props, "found"> & { readonly first: WhoseFound; readonly second: WhoseFound };

function JoinButton({ first, second, ask, busy }: JoinProps) {
  const join = () => ask({ join: { unit: first.unit, first: first.number, second: second.number } });
  return (
    <button type="button" disabled={busy} onClick={join}>
      Join case {second.case} to case {first.case}
    </button>
  );
}
