import { counted } from "@/lib/charts";
import { templateCsv } from "@/lib/intake";
import type { Arrived, SheetArrived } from "../_talk/view";
import { bringFiles, forgetFile } from "./doings";
import { FindingLine } from "./finding-line";
import { GoOn } from "./go-on";
import type { PartProps } from "./part-props";
import { saveBlob } from "./save-blob";

const encodings: Readonly<Record<string, string>> = {
  "utf-8": "UTF-8",
  "utf-16le": "UTF-16",
  "utf-16be": "UTF-16",
  "windows-1252": "Windows-1252",
};
const delimiters: Readonly<Record<string, string>> = { ",": "commas", ";": "semicolons", "\t": "tabs" };

/** What arrived: the files as they were read, and the ones that can't be. */
export function ArrivedPart({ store, state, goTo }: PartProps) {
  const { arrived } = state;
  return (
    <>
      <div className="drop sans not-printed">
        <label htmlFor="files">
          {arrived.length === 0 ? "Drop the spreadsheet here, or choose it" : "Bring another file, or a mended one of the same name"}
        </label>
        <input
          id="files"
          type="file"
          multiple
          accept=".csv,.tsv,.txt,.xlsx,.json"
          onChange={(event) => {
            void bringFiles(store, [...(event.target.files ?? [])]);
            event.target.value = "";
          }}
        />
        <p className="muted small">
          As you keep it: a row a bone, or a sheet a table; a workbook (.xlsx), or text with commas, semicolons or tabs. It may hold names,
          numbers and dates: they go no further than this tab.
        </p>
      </div>
      {arrived.length === 0 ? (
        <p>
          Here would stand what was recognised: encoding, delimiter, rows.{" "}
          <button type="button" className="as-link" onClick={saveTemplate}>
            Save the template of a one-sheet form
          </button>{" "}
          if you have none of your own.
        </p>
      ) : (
        <ul className="plain">
          {arrived.map((file) => (
            <ArrivedFile key={file.file} arrived={file} forget={() => forgetFile(store, file.file)} />
          ))}
        </ul>
      )}
      <GoOn from="arrived" state={state} goTo={goTo} />
    </>
  );
}

function ArrivedFile({ arrived, forget }: { readonly arrived: Arrived; readonly forget: () => void }) {
  const { file, sheets, findings, skipped } = arrived;
  return (
    <li className="file">
      <h3>{file}</h3>
      {sheets.length === 0 ? <p className="warm">This file can’t be taken in. Nothing of it was used.</p> : null}
      {sheets.map((sheet) => (
        <p key={sheet.name} className="sans number">
          {sheet.name === file ? "" : `${sheet.name}: `}
          {sheetWords(sheet)}
        </p>
      ))}
      {skipped.map(({ sheet, why }) => (
        <p key={sheet} className="sans muted">
          Passed over: {sheet} ({skippedWords[why]}).
        </p>
      ))}
      <ul className="plain findings">
        {findings.slice(0, mostFindings).map((finding) => (
          <FindingLine key={`${finding.code} ${finding.file} ${finding.row} ${finding.column}`} finding={finding} />
        ))}
      </ul>
      {findings.length > mostFindings ? (
        <p className="sans muted">and {findings.length - mostFindings} more, listed under what needs your word.</p>
      ) : null}
      <p className="doings sans">
        <button type="button" onClick={forget}>
          Leave this file out<span className="only-heard"> {file}</span>
        </button>
      </p>
    </li>
  );
}

const mostFindings = 20;
const skippedWords = { hidden: "hidden in the workbook", blank: "blank", "no-table": "no table of cases" } as const;

function sheetWords({ rows, columns, encoding, delimiter, headerRow, ragged }: SheetArrived): string {
  const size = `${counted(rows, "row")} of ${counted(columns, "column")}`;
  const form =
    encoding === "workbook" ? "a workbook" : `${encodings[encoding] ?? encoding}, ${delimiters[delimiter] ?? ""} between the cells`;
  const uneven = ragged > 0 ? `; ${counted(ragged, "row")} with too many or too few cells` : "";
  return `${size}; ${form}; headers in row ${headerRow}${uneven}.`;
}

function saveTemplate(): void {
  saveBlob(new Blob([templateCsv("one-sheet")], { type: "text/csv;charset=utf-8" }), "one-sheet.csv");
}
