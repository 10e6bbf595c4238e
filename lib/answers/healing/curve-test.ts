import { estimate } from "@/lib/stats";
import type { Note } from "../types";
import type { OnCurve } from "./curve-rows";
import type { GroupKey } from "./groups";
import { seed } from "./median-interval";
import { said } from "./said";

export type CurveTest = {
  /** `null`: none can be had, and a note says why. */
  readonly p: number | null;
  readonly method: string;
  /** Groups held against each other: *not recorded* is none. */
  readonly groups: number;
  readonly notes: readonly Note[];
};
type Tested = { readonly key: GroupKey; readonly label: string; readonly onCurve: readonly OnCurve[] };

/**
 * Whether the curves of all groups are one: the robust score by patient, whole patients permuted where there are few; where bones ended
 * unhealed Gray's test, which is had only with one bone a patient. `null`: fewer than two groups have a curve.
 */
export function curveTest(all: readonly Tested[], competing: string): CurveTest | null {
  const groups = all.filter(({ key, onCurve }) => onCurve.length > 0 && Object.values(key).every((value) => value !== null));
  if (groups.length < 2) return null;
  const rows = groups.flatMap(({ label, onCurve }) => onCurve.map((row) => ({ ...row, label })));
  const common = {
    days: rows.map(({ days }) => days),
    patient: rows.map(({ person }) => person),
    group: rows.map(({ label }) => label),
    test: true,
    seed,
  };
  const ended = rows.some(({ outcome }) => outcome === "ended");
  const { test } = ended
    ? estimate({
        situation: "competing",
        ...common,
        event: rows.map(({ outcome }) => ({ censored: 0, healed: 1, ended: 2 })[outcome]),
        causes: ["healed", competing],
      })
    : estimate({
        situation: "healing-curve",
        ...common,
        healed: rows.map(({ outcome }) => Number(outcome === "healed")),
        gainCm: rows.map(({ gainMm }) => (gainMm ?? 0) / 10),
      });
  return test && { p: test.p, method: test.method, groups: groups.length, notes: test.notes.map(said) };
}
