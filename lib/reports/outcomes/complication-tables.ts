import type { MatrixAnswer, MatrixRow, MeasureAnswer, MeasureGroup } from "@/lib/answers";
import { wordsOfCode } from "@/lib/answers";
import { type Column, count, decimals, grouped, noValue, percentText, tableFrom, words } from "@/lib/charts";
import type { ToldTable } from "../told/told";
import { classWords, upperFirst } from "../words/code-words";

const phases = ["in-theatre", "latency", "distraction", "consolidation", "after", "not recorded"] as const;

type Row = { readonly answer: MeasureAnswer; readonly group: MeasureGroup };

/** Every denominator as numerator over denominator, a row each. */
export function denominatorsTable(answers: readonly MeasureAnswer[]): ToldTable {
  const labels = answers[0]?.groups.map(({ label }) => label) ?? [];
  const rows = labels.flatMap((label) =>
    answers.flatMap((answer): Row[] => answer.groups.filter((group) => group.label === label).map((group) => ({ answer, group }))),
  );
  const columns: Column<Row>[] = [
    words("group", "Group", ({ group }) => group.label),
    words("what", "What", ({ answer }) => answer.definition.title),
    count("numerator", "Numerator", ({ group }) => group.share?.x ?? group.rate?.events),
    { id: "denominator", head: "Denominator", align: "end", cell: ({ group }) => denominatorText(group) },
    { id: "estimate", head: "Estimate", align: "end", cell: ({ group }) => estimateText(group) },
    { id: "interval", head: "95 % CI", align: "end", cell: ({ group }) => intervalText(group) },
  ];
  return { caption: "Over each denominator", table: tableFrom(columns, rows) };
}

function denominatorText({ share, rate }: MeasureGroup): string {
  if (share) return grouped(share.n);
  return rate ? decimals(rate.exposure, Number.isInteger(rate.exposure) ? 0 : 1) : noValue;
}

function estimateText({ share, rate }: MeasureGroup): string {
  if (share) return share.estimate === null ? noValue : `${percentText(share.estimate)} %`;
  return rate?.estimate == null ? noValue : decimals(rate.estimate, 2);
}

function intervalText({ share, rate }: MeasureGroup): string {
  const limits = share ?? rate;
  if (limits?.lower == null || limits.upper === null) return noValue;
  const text = (value: number) => (share ? percentText(value) : decimals(value, 2));
  return `${text(limits.lower)} to ${text(limits.upper)}${share ? " %" : ""}`;
}

type Operations = { readonly label: string; readonly purpose: string; readonly byPhase: ReadonlyMap<string, number> };

/** Unplanned operations by what they were for and when; planned ones are in no count. */
export function operationsTable(operations: MeasureAnswer | undefined): ToldTable {
  const rows = (operations?.groups ?? []).flatMap(({ label, classes = {} }) => {
    const purposes = new Map<string, Map<string, number>>();
    for (const [name, n] of Object.entries(classes)) {
      const [purpose = "", phase = ""] = name.split(", ");
      purposes.set(purpose, (purposes.get(purpose) ?? new Map<string, number>()).set(phase, n));
    }
    return [...purposes].map(([purpose, byPhase]): Operations => ({ label, purpose, byPhase }));
  });
  const all = ({ byPhase }: Operations) => [...byPhase.values()].reduce((sum, n) => sum + n, 0);
  const columns: Column<Operations>[] = [
    words("purpose", "For", ({ purpose }) => upperFirst(wordsOfCode(purpose))),
    ...((operations?.groups.length ?? 0) > 1 ? [words<Operations>("group", "Group", ({ label }) => label)] : []),
    count("all", "Operations", all),
    ...phases.map((phase) =>
      count<Operations>(phase, upperFirst(wordsOfCode(phase)), ({ byPhase }) => byPhase.get(phase) ?? byPhase.get(`phase ${phase}`) ?? 0),
    ),
  ];
  return {
    caption: "Unplanned operations, by what they were for and when",
    table: tableFrom(
      columns,
      [...rows].sort((a, b) => all(b) - all(a)),
    ),
  };
}

/** Patients by the heaviest class of their segments. */
export function worstTable(worst: MeasureAnswer | undefined, { scheme }: MatrixAnswer): ToldTable {
  const columns: Column<MeasureGroup>[] = [
    words("group", "Group", ({ label }) => label),
    count("n", "Patients looked for", ({ n }) => n),
    count("none", "None", ({ classes }) => classes?.none ?? 0),
    ...scheme.classes.map((name) => count<MeasureGroup>(name, upperFirst(classWords(name)), ({ classes }) => classes?.[name] ?? 0)),
  ];
  return { caption: `Patients by their heaviest class (${scheme.title.toLowerCase()})`, table: tableFrom(columns, worst?.groups ?? []) };
}

/** Implants taken out or not, and when those within were last seen on film. */
export function implantsTable({ groups }: MatrixAnswer): ToldTable {
  type Row = MatrixAnswer["groups"][number];
  const columns: Column<Row>[] = [
    words("group", "Group", ({ label }) => label),
    count("segments", "Segments", ({ segments }) => segments),
    count("out", "Out", ({ implants }) => implants.out),
    count("not-out", "No removal recorded", ({ implants }) => implants.notOut),
    count("no-film", "Of these, no film", ({ implants }) => implants.noFilm),
    { ...count<Row>("median", "Last film, median", ({ implants }) => implants.lastFilm?.median), unit: "days from surgery" },
    {
      id: "range",
      head: "Earliest to latest",
      unit: "days from surgery",
      align: "end",
      cell: ({ implants: { lastFilm } }) => (lastFilm ? `${lastFilm.least} to ${lastFilm.most}` : noValue),
    },
  ];
  return { caption: "Implants, and when those not out were last seen on film", table: tableFrom(columns, groups) };
}

/** When events of each type began, what they needed, and whether they had resolved within a year. */
export function factsTable({ groups }: MatrixAnswer): ToldTable {
  const rows = groups.flatMap(({ label, rows: own }) => own.map((row) => ({ ...row, label })));
  type Fact = MatrixRow & { readonly label: string };
  const columns: Column<Fact>[] = [
    words("type", "Event", ({ type }) => upperFirst(wordsOfCode(type))),
    ...(groups.length > 1 ? [words<Fact>("group", "Group", ({ label }) => label)] : []),
    count("events", "Events", ({ events }) => events),
    ...phases.map((phase) => count<Fact>(phase, upperFirst(wordsOfCode(phase)), ({ byPhase }) => byPhase[phase] ?? 0)),
    count("operations", "Needed an operation", ({ operations }) => operations),
    count("resolved", "Resolved within 12 months", ({ resolvedWithin12Months }) => resolvedWithin12Months),
  ];
  return { caption: "When events began, and what came of them", table: tableFrom(columns, rows) };
}
