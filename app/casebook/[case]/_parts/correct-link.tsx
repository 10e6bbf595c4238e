import type { TableName } from "@/lib/codebook";
import { correctName } from "../_correct";

type Props = {
  readonly number: number;
  readonly table: TableName;
  readonly entity: number;
  readonly field?: string;
  readonly label: string;
};

/** The way to correct one field by hand, or to choose which of a row. */
export function CorrectLink({ number, table, entity, field, label }: Props) {
  return (
    <a
      className="correct not-printed"
      href={`/casebook/${number}?correct=${correctName(table, entity, field)}#correct`}
      aria-label={`Correct ${label}`}
    >
      correct
    </a>
  );
}
