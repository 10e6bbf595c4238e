import type { CaseMixAnswer, Likeness } from "@/lib/answers";
import { wordsOfCode } from "@/lib/answers";
import { type BalanceRecord, decimals, percentText } from "@/lib/charts";

/** Case mix as its figure takes it: fields in words, and what each group is like. */
export function balanceRecord(answer: CaseMixAnswer): BalanceRecord {
  const [a, b] = answer.sides;
  const group = ({ words, segments, patients }: typeof a) => ({ label: words, segments, patients });
  return {
    definition: answer.definition,
    batch: answer.batch,
    stamp: answer.stamp,
    dataTo: answer.dataTo,
    groups: [group(a), group(b)],
    rows: answer.balance.map(({ label, smd, recorded, like }) => ({
      label,
      smd,
      recorded,
      values: [likeText(like[0]), likeText(like[1])],
    })),
  };
}

/** `14.2 years (SD 3.1)`, `62 % stature`. */
export function likeText(like: Likeness | null): string {
  if (like === null) return "not recorded";
  if (like.kind === "number") {
    const unit = like.unit === null ? "" : ` ${like.unit}`;
    return `${decimals(like.mean, 1)}${unit}${like.deviation === null ? "" : ` (SD ${decimals(like.deviation, 1)})`}`;
  }
  const value = typeof like.value === "boolean" ? (like.value ? "yes" : "no") : wordsOfCode(String(like.value));
  return `${percentText(like.share)} % ${value}`;
}
