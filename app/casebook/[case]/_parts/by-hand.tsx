import type { CaseAnswer } from "@/lib/answers";
import type { TableName } from "@/lib/codebook";
import { valueWords } from "../../_words";
import { correctionOf } from "../_correct";

type Props = { readonly answer: CaseAnswer; readonly table: TableName; readonly entity: number; readonly field: string };

/** That a field was corrected by hand, and what the sheet says of it. */
export function ByHand({ answer, table, entity, field }: Props) {
  const correction = correctionOf(answer.corrections, table, entity, field);
  return correction === undefined ? null : (
    <span className="by-hand">by hand; the sheet: {valueWords(correction, correction.sheet)} ·</span>
  );
}
