import { noteText } from "@/lib/stats";
import type { Note } from "../types";

/** A note as page, command line and figure show it: its code and its sentence. */
export function said(note: Parameters<typeof noteText>[0]): Note {
  return { code: note.code, text: noteText(note) };
}
