import { counted } from "@/lib/charts";
import type { View } from "../_talk/view";
import type { IntakeState } from "./state";
import type { Step } from "./steps";
import { madeWords } from "./words";

/** What a part has come to, in a line: what stands of it while it is folded. */
export function gistOf(step: Step, state: IntakeState): string {
  const { view } = state;
  if (step === "arrived") return arrivedGist(state);
  if (step === "key") return keyGist(state);
  return view === null || state.key.is === "shut" ? "" : viewGists[step](view, state);
}

function arrivedGist({ arrived }: IntakeState): string {
  const read = arrived.filter(({ sheets }) => sheets.length > 0);
  if (arrived.length === 0) return "";
  const sheets = read.flatMap((file) => file.sheets);
  const rows = sheets.reduce((sum, sheet) => sum + sheet.rows + sheet.ragged, 0);
  const refused = arrived.length - read.length;
  return `${counted(read.length, "file")}${sheets.length > read.length ? ` of ${counted(sheets.length, "sheet")}` : ""}, ${counted(rows, "row")}${refused > 0 ? `; ${counted(refused, "file")} refused` : ""}`;
}

function keyGist({ key }: IntakeState): string {
  if (key.is === "shut") return "";
  if (key.how === "sealed") return "Open in this tab; its new passphrase is kept with this file";
  return key.how === "made" ? "Made in this tab; kept with the first batch" : "Open in this tab";
}

const viewGists: { readonly [S in Exclude<Step, "arrived" | "key">]: (view: View, state: IntakeState) => string } = {
  understood: ({ sheets, questions }) => {
    const columns = sheets.flatMap((sheet) => sheet.columns);
    const open = questions.filter(({ settledBy }) => settledBy !== "answers").length;
    const used = columns.filter(({ field }) => field !== null).length;
    return `${used} of ${counted(columns.length, "column")} mean a field${open > 0 ? `; ${counted(open, "question")} open` : ""}`;
  },
  comments: ({ comments }, { said }) =>
    comments.length === 0 ? "There are no comments" : `${said.coded.length} of ${counted(comments.length, "comment")} coded`,
  stripped: ({ sheets }) => {
    const out = sheets.flatMap((sheet) => sheet.columns).filter(({ field }) => field === null).length;
    return `${out === 0 ? "No column" : counted(out, "column")} left out; local numbers, names and dates turned into something else`;
  },
  findings: ({ stage, counts, questions }) => {
    const open = questions.filter(({ settledBy }) => settledBy === "answers").length;
    if (stage === "columns") return "";
    return `${counted(counts.rowsRefused, "row")} set aside${open > 0 ? `; ${counted(open, "question")} open` : ""}`;
  },
  kept: ({ stage, counts, questions }, { receipt }) => {
    if (receipt !== null) return receipt.batch === null ? "Nothing was new" : `Kept, as batch ${receipt.batch}`;
    if (stage === "columns") return "";
    if (questions.length > 0) return `Waits for ${counted(questions.length, "answer")}`;
    return madeWords(counts.made);
  },
};
