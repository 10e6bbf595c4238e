import { counted } from "@/lib/charts";
import { templateCsv } from "@/lib/intake";
import type { Arrived } from "../_talk/view";
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
  workbook: "a sheet of a workbook",
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
  const { file, sheet, findings } = arrived;
  return (
    <li className="file">
      <h3>{file}</h3>
      {sheet === null ? (
        <p className="warm">This file can’t be taken in. Nothing of it was used.</p>
      ) : (
        <p className="sans number">
          {counted(sheet.rows, "row")} of {counted(sheet.columns, "column")}; {encodings[sheet.encoding] ?? sheet.encoding}
          {sheet.encoding === "workbook" ? "; " : ", "}
          {sheet.encoding === "workbook" ? "" : `${delimiters[sheet.delimiter] ?? ""} between the cells; `}headers in row {sheet.headerRow}
          {sheet.ragged > 0 ? `; ${counted(sheet.ragged, "row")} with too many or too few cells` : ""}.
        </p>
      )}
      <ul className="plain findings">
        {findings.slice(0, 20).map((finding) => (
          <FindingLine key={`${finding.code} ${finding.row} ${finding.column}`} finding={finding} />
        ))}
      </ul>
      {findings.length > 20 ? <p className="sans muted">and {findings.length - 20} more of the kind, listed further down.</p> : null}
      <p className="doings sans">
        <button type="button" onClick={forget}>
          Leave this file out<span className="only-heard"> {file}</span>
        </button>
      </p>
    </li>
  );
}

function saveTemplate(): void {
  saveBlob(new Blob([templateCsv("one-sheet")], { type: "text/csv;charset=utf-8" }), "one-sheet.csv");
}
