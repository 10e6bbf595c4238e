import { type Answer, storedAnswers } from "../../external/r-scripts";
import { type CheckValue, check } from "../../external/stat-checks";

/** One answer of ours beside one from outside. */
export interface Comparison {
  readonly method: string;
  readonly check: string;
  readonly source: string;
  readonly field: string;
  readonly ours: unknown;
  readonly theirs: CheckValue;
}

export type Fields = Readonly<Record<string, unknown>>;

/** Our fields beside the printed figures of a check, and beside R's answer to it in full. */
export function withCheck(method: string, id: string, ours: Fields): Comparison[] {
  const { expected, computed, source, provenance, read } = check(id);
  const printed = provenance === "published" ? `${source} (${read})` : "";
  return Object.entries(ours).flatMap(([field, value]) => {
    const rows: Comparison[] = [];
    const row = { method, check: id, field, ours: value };
    const [figure, answer] = provenance === "published" ? [expected[field], computed?.[field]] : [undefined, expected[field]];
    if (figure !== undefined) rows.push({ ...row, source: printed, theirs: figure });
    if (answer !== undefined) rows.push({ ...row, source: "R, answers.R", theirs: answer });
    if (rows.length === 0) throw new RangeError(`withCheck requires a field of ${id}, received ${field}`);
    return rows;
  });
}

/** Our fields beside a stored answer of an R script; `part` names the record inside it that holds R's fields. */
export function withAnswer(method: string, script: string, id: string, ours: Fields, part?: string): Comparison[] {
  const whole = storedAnswers(script).answers[id] as Readonly<Record<string, Answer>>;
  const theirs = (part ? whole[part] : whole) as Readonly<Record<string, CheckValue>>;
  return Object.entries(ours).map(([field, value]) => {
    const answer = theirs[field];
    if (answer === undefined) throw new RangeError(`withAnswer requires a field of ${id}, received ${field}`);
    return { method, check: id, source: `R, ${script}.R`, field, ours: value, theirs: answer };
  });
}

/** Ids of a script's stored answers that start so. */
export function idsOf(script: string, prefix: string): string[] {
  return Object.keys(storedAnswers(script).answers).filter((id) => id.startsWith(prefix));
}

/** Some fields of a record under the check's names: `pick(ours, { p_two_sided: "p" })`. */
export function pick(record: object, names: Readonly<Record<string, string>>): Fields {
  return Object.fromEntries(Object.entries(names).map(([theirs, ours]) => [theirs, (record as Fields)[ours]]));
}
