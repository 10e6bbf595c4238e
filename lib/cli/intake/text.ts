import { counted, rowWords } from "@/lib/charts";
import type { Finding } from "@/lib/intake";
import { type CountName, type Counts, countNames } from "@/lib/registry";
import type { IntakeAnswer } from "./answer";
import type { PreparedFiles } from "./prepare-files";

const names: readonly CountName[] = Object.values(countNames);

/** Words for nothing too. */
const countsText = (counts: Counts) => rowWords(counts) || "nothing";
const rowsInAll = (counts: Counts) => names.reduce((sum, name) => sum + counts[name], 0);

/** The same for a person: findings by kind first, what they cost before what they say. */
export function textOfIntake(answer: IntakeAnswer, { groups, findings }: PreparedFiles): string {
  const lines = [
    batchText(answer),
    ...(answer.changes.length > 0 ? answer.changes.slice(0, mostShown).map(changeText) : []),
    ...(rowsInAll(answer.absent) > 0
      ? [
          `${countsText(answer.absent)} held and not in these files; they stay held.`,
          ...answer.absentSegments.slice(0, mostShown).map(segmentText),
        ]
      : []),
    ...(answer.waiting && rowsInAll(answer.waiting) > 0 ? [waitingText(answer.waiting)] : []),
    `${counted(answer.refused, "row")} set aside. Columns not kept: ${answer.dropped.join(", ") || "none"}.`,
    ...findings.filter(({ code }) => code === "column-dropped").map(({ column, mend }) => `  ${column}: ${mend}`),
    ...(answer.comments.length > 0
      ? [`${counted(answer.comments.length, "comment")}, none coded here: their segments stand as events not collected.`]
      : []),
    ...groups
      .filter(({ severity }) => severity !== "note")
      .map(
        ({ code, severity, column, rows, bringsBack }) =>
          `${severity}  ${code}${column ? ` in ${column}` : ""}: ${counted(rows, "row")}${bringsBack > 0 ? `, mending brings back ${counted(bringsBack, "segment")}` : ""}`,
      ),
    ...findings
      .filter(({ severity }) => severity === "error")
      .slice(0, mostShown)
      .map(findingText),
    ...answer.asks.map(
      ({ code, column, settledBy, choices }) =>
        `must be answered: ${code}${column ? ` in ${column}` : ""}; settled by ${settledBy} in the mapping${optionFor(settledBy)}, one of ${choices.join(", ")}`,
    ),
  ];
  return lines.join("\n");
}

const mostShown = 50;

function waitingText(waiting: Counts): string {
  const [waits, their, they] = rowsInAll(waiting) === 1 ? ["waits", "its", "it is"] : ["wait", "their", "they are"];
  return `${countsText(waiting)} ${waits} for the sheet that holds ${their} segment or patient; until then ${they} in no figure.`;
}

function batchText({ batch, committed, changed, unchanged, fresh, changes }: IntakeAnswer): string {
  if (batch !== null)
    return `Batch ${batch}: ${countsText(committed)} new; ${countsText(changed)} changed; ${countsText(unchanged)} as held.`;
  const news = rowsInAll(fresh) > 0 || changes.length > 0;
  const differ = counted(changes.length, "field of rows held differs", "fields of rows held differ");
  return news ? `Not kept: ${countsText(fresh)} new; ${differ}.` : "Nothing new.";
}

function segmentText({
  bone,
  side,
  surgeryYear,
  surgeryQuarter,
  ageAtSurgeryYears,
  device,
}: IntakeAnswer["absentSegments"][number]): string {
  const when = surgeryQuarter === null ? `${surgeryYear}` : `${surgeryYear}, quarter ${surgeryQuarter}`;
  const age = ageAtSurgeryYears === null ? null : `at ${ageAtSurgeryYears} years`;
  return `  ${[bone, side, when, age, device].filter((part) => part !== null).join(", ")}`;
}

function changeText({ file, row, field, from, to, days }: IntakeAnswer["changes"][number]): string {
  const unit = days === null ? "" : days === "from-surgery" ? " days from surgery" : " days from the day held";
  return `  ${file}, row ${row}: ${field} ${from ?? "not recorded"} → ${to}${unit}`;
}

function findingText({ row, column, found, expected, mend }: Finding): string {
  const place = [row === null ? null : `row ${row}`, column].filter(Boolean).join(", ");
  return `  ${place}: found ${found}, expected ${expected}; ${mend}`;
}

const options: Readonly<Record<string, string>> = { dates: " or --dates", decimal: " or --decimal", units: " or --lengths" };
function optionFor(settledBy: string): string {
  return options[settledBy] ?? "";
}
