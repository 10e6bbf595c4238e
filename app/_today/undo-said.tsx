import { listed } from "@/lib/charts";
import type { Asked } from "../_page/asked";

type Props = { readonly asked: Asked };

/** What came of taking a batch back: the address says it, so that a reload says it again and does nothing again. */
export function UndoSaid({ asked }: Props) {
  const text = undoText(asked);
  return text === null ? null : (
    <p className={`said sans${text.done ? "" : " warm"}`} role="status">
      {text.words}
    </p>
  );
}

function undoText({ undo, batch, blockedBy, failed }: Asked): { readonly done: boolean; readonly words: string } | null {
  if (undo === undefined) return null;
  if (!isNumber(undo)) return { done: false, words: "There is no such batch. Nothing was changed." };
  if (isNumber(batch))
    return { done: true, words: `Batch ${undo} was taken back, as batch ${batch}. To have it again, take batch ${batch} back.` };
  if (failed !== undefined)
    return {
      done: false,
      words: `Batch ${undo} could not be taken back: the disk is full, or another process holds the registry. Nothing was changed.`,
    };
  const names = typeof blockedBy === "string" ? blockedBy.split(",").filter(isNumber) : [];
  const later = `batch${names.length === 1 ? "" : "es"} ${listed(names)}`;
  return {
    done: false,
    words: `Batch ${undo} can’t be taken back yet: ${names.length === 0 ? "a later batch" : later} changed some of its cases since. Take ${
      names.length === 1 ? "that one" : "those"
    } back first, newest first. Nothing was changed.`,
  };
}

function isNumber(text: unknown): text is string {
  return typeof text === "string" && /^\d{1,9}$/.test(text);
}
