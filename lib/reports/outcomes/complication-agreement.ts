import type { Agreement, MatrixAnswer } from "@/lib/answers";
import { type Column, count, counted, decimals, grouped, listed, shownInterval, tableFrom, words } from "@/lib/charts";
import type { ToldTable } from "../told/told";
import { classWords, upperFirst } from "../words/code-words";

type Held = { readonly label: string; readonly agreement: Agreement };

function held({ groups }: MatrixAnswer): readonly Held[] {
  return groups.flatMap(({ label, agreement }) => (agreement === null ? [] : [{ label, agreement }]));
}

const noUnit = { name: "", perRecord: 1, digits: 2, valueDigits: 2 };

/** How far the surgeon's own class and the derived one agree; `null` where nobody recorded one. */
export function agreementText(matrix: MatrixAnswer): string | null {
  const texts = held(matrix).map(({ label, agreement }) => {
    const { of, n, alike, kappa } = agreement;
    const what = `${grouped(alike)} of ${counted(n, of === "event" ? "event" : "treatment")} classed alike`;
    const interval = shownInterval(kappa, noUnit) ?? "no interval";
    const weighed = kappa.estimate === null ? "" : `, weighted kappa ${decimals(kappa.estimate, 2)} (${interval})`;
    return `${matrix.groups.length === 1 ? "" : `${label} `}${what}${weighed}`;
  });
  return texts.length === 0 ? null : `The surgeon’s class beside the derived one: ${texts.join("; ")}.`;
}

type Row = { readonly label: string; readonly recorded: string; readonly counts: readonly number[] };

/** Recorded down, derived across: of which class a disagreement is made. */
export function agreementTable(matrix: MatrixAnswer): ToldTable | null {
  const { classes } = matrix.scheme;
  const rows = held(matrix).flatMap(({ label, agreement: { table } }) =>
    table.map((counts, i): Row => ({ label, recorded: classes[i] ?? "", counts })).filter(({ counts }) => counts.some((n) => n > 0)),
  );
  if (rows.length === 0) return null;
  const columns: Column<Row>[] = [
    ...(matrix.groups.length > 1 ? [words<Row>("group", "Group", ({ label }) => label)] : []),
    words("recorded", "Recorded", ({ recorded }) => upperFirst(classWords(recorded))),
    ...classes.map((name, i) => count<Row>(name, `Derived ${classWords(name)}`, ({ counts }) => counts[i] ?? 0)),
  ];
  return { caption: "The surgeon’s class, and the one derived from the facts", table: tableFrom(columns, rows) };
}

/** Cautions of the kappas, and how they were worked out. */
export function agreementMethod(matrix: MatrixAnswer): string | null {
  const methods = new Set(held(matrix).map(({ agreement }) => agreement.method));
  return methods.size === 0 ? null : listed([...methods]);
}
