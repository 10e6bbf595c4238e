"use client";

import { type ReactNode, useState } from "react";
import { pictureOf, printPicture, savePicture, saveText } from "./picture";
import { withFaces } from "./svg-faces";

type Props = {
  readonly svg: string;
  readonly caption: string;
  readonly fileName: string;
  readonly csv: string | null;
  readonly children: ReactNode;
};

/** What one does next with a figure: copy it, save it, copy its caption. */
export function FigureDoings({ svg, caption, fileName, csv, children }: Props) {
  const [done, setDone] = useState("");
  const attempt = (work: () => Promise<void>, words: string) => () =>
    work().then(
      () => setDone(words),
      () => setDone("The browser did not allow it. Save the figure instead."),
    );
  const copyPicture = attempt(() => navigator.clipboard.write([new ClipboardItem({ "image/png": pictureOf(svg) })]), "Figure copied.");
  const saveDrawing = attempt(async () => saveText(await withFaces(svg), fileName, "image/svg+xml"), "Saved with its typeface inside.");
  const saveForPrint = attempt(
    async () => savePicture(await printPicture(svg), fileName.replace(/svg$/, "png")),
    "Saved at 300 dots an inch.",
  );
  const copyCaption = attempt(() => navigator.clipboard.writeText(caption), "Caption copied.");
  return (
    <div className="doings sans">
      <button type="button" onClick={copyPicture}>
        Copy the figure
      </button>
      <button type="button" onClick={saveDrawing}>
        Save as .svg
      </button>
      <button type="button" onClick={saveForPrint}>
        Save as .png, 300 dpi
      </button>
      {csv === null ? null : (
        <button type="button" onClick={() => saveText(csv, fileName.replace(/svg$/, "csv"), "text/csv")}>
          Save the numbers as .csv
        </button>
      )}
      <button type="button" onClick={copyCaption}>
        Copy the caption
      </button>
      <span role="status">{done}</span>
      {children}
    </div>
  );
}
