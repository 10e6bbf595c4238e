import type { CodedEvent, CodedRow, Origin } from "@/lib/intake";
import type { IntakeStore } from "./store";

/** What was coded of a row's comment; `undefined` when it wasn't looked at, no events when there was nothing to code. */
export function codedOf(coded: readonly CodedRow[], { file, row }: Origin): CodedRow | undefined {
  return coded.find((one) => one.row === row && one.file === file);
}

/** Codes the comments of rows alike; `null` takes the coding back. */
export function codeComment(store: IntakeStore, rows: readonly Origin[], events: readonly CodedEvent[] | null): void {
  const others = store.state.said.coded.filter((one) => !rows.some(({ file, row }) => one.row === row && one.file === file));
  const fresh = events === null ? [] : rows.map(({ file, row }) => ({ file, row, events }));
  store.say({ coded: [...others, ...fresh] });
}
