"use client";

import { PartForm } from "../_parts/part-form";
import type { WhoseAsked, WhoseFound } from "../_whose/talk";

type Props = { readonly found: readonly WhoseFound[]; readonly ask: (asked: WhoseAsked) => void; readonly busy: boolean };

/** Two numbers looked up together: whether they are one case, and the way to make them one, or two again. */
export function WhosePair({ found, ask, busy }: Props) {
  const [a, b] = found;
  if (found.length !== 2 || !a || !b || a.case === null || b.case === null) return null;
  if (a.case === b.case) return <OnePatient number={a.case} owns={[a.own, b.own]} />;
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

/** A number that isn't the first of its patient can be parted: it gets its own case again. */
function OnePatient({ number, owns }: { readonly number: number; readonly owns: readonly (number | null)[] }) {
  const seconds = owns.filter((own): own is number => own !== null && own !== number);
  return (
    <div className="said sans">
      <p>
        These two are one patient: <a href={`/casebook/${number}`}>case {number}</a>. Parted, each gets its own again, with what came under
        its number since. That is a batch, and can be taken back.
      </p>
      <div className="doings">
        {seconds.map((second) => (
          <PartForm key={second} second={second} from={number} />
        ))}
      </div>
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
