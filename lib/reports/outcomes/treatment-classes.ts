import { ask, type MeasureAnswer, type MeasureGroup } from "@/lib/answers";
import { type Column, count, counted, grouped, tableFrom, words } from "@/lib/charts";
import type { Registry } from "../told/question";
import type { ToldTable } from "../told/told";
import { classWords } from "../words/code-words";

/** The two ways of one scheme: treatments classed with its time rule, and without. */
const ways = { "triple-contract": "with its time rule", "triple-contract-without-time": "without it" } as const;
type Way = keyof typeof ways;

type Asked = Omit<Parameters<typeof ask>[1], "measure">;
type Row = { readonly way: string; readonly group: MeasureGroup };
export type TreatmentClasses = { readonly sentence: string; readonly table: ToldTable };

/**
 * Treatments by class with the time rule and without it: slow healing is an index and no event, so both stand beside each other.
 * `null` for schemes that class events.
 */
export async function treatmentClasses(registry: Registry, asked: Asked): Promise<TreatmentClasses | null> {
  if (asked.scheme === undefined || !(asked.scheme in ways)) return null;
  const [both, without] = await Promise.all(
    (Object.keys(ways) as Way[]).map(
      (scheme) => ask(registry, { ...asked, scheme, measure: "complication-segments-with-any" }) as Promise<MeasureAnswer>,
    ),
  );
  const rows = (
    [
      [both, "triple-contract"],
      [without, "triple-contract-without-time"],
    ] as const
  ).flatMap(([answer, way]) => (answer?.groups ?? []).map((group): Row => ({ group, way: ways[way] })));
  const classes = ["i", "ii", "iii", "iv"] as const;
  const columns: Column<Row>[] = [
    words("way", "Triple contract", ({ way }) => way),
    words("group", "Group", ({ group }) => group.label),
    count("n", "Treatments", ({ group }) => group.n),
    ...classes.map((name) => count<Row>(name, classWords(name), ({ group }) => group.classes?.[name] ?? 0)),
  ];
  return {
    sentence: sentenceOf(both, without),
    table: { caption: "Treatments by class, with the time rule and without it", table: tableFrom(columns, rows) },
  };
}

/** How many treatments are above the first class, with the time rule and without it. */
function sentenceOf(both: MeasureAnswer | undefined, without: MeasureAnswer | undefined): string {
  const broken = (answer: MeasureAnswer | undefined) =>
    (answer?.groups ?? []).reduce((sum, { classes = {} }) => sum + (classes.ii ?? 0) + (classes.iii ?? 0) + (classes.iv ?? 0), 0);
  const n = (both?.groups ?? []).reduce((sum, group) => sum + group.n, 0);
  return `Above the first class: ${grouped(broken(both))} of ${counted(n, "treatment")} with the time rule, ${grouped(broken(without))} without it.`;
}
