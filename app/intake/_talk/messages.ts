import type { CodedRow, Finding, Mapping, Progress, RowAnswer } from "@/lib/intake";
import type { PaceOfCommit } from "./commit";
import type { Door } from "./door";
import type { Receipt } from "./receipt";
import type { Arrived, CommentShown, RefusedShown, View } from "./view";

/** What the person has said so far, by which the files are prepared. */
export type Said = { readonly mapping: Mapping; readonly rowAnswers: readonly RowAnswer[]; readonly coded: readonly CodedRow[] };

/** Whose word holds of a field corrected by hand, where the sheet says something new: the correction's, or the sheet's. */
export type OverCorrections = "keep" | "sheet";

/** What the page may ask of the worker: each question, and the shape of its answer. */
export type Questions = {
  door: { asked: Record<never, never>; answer: Omit<Door, "unitKey"> & { readonly hasKey: boolean } };
  read: { asked: { readonly files: readonly File[] }; answer: readonly Arrived[] };
  forget: { asked: { readonly file: string }; answer: readonly Arrived[] };
  makeKey: { asked: { readonly passphrase: string }; answer: { readonly recoveryCode: string } };
  openKey: { asked: { readonly by: "passphrase" | "recovery-code"; readonly secret: string }; answer: { readonly opened: boolean } };
  sealAnew: { asked: { readonly passphrase: string }; answer: { readonly sealed: true } };
  prepare: { asked: Said; answer: View };
  findings: { asked: { readonly group: string; readonly from: number; readonly count: number }; answer: readonly Finding[] };
  refused: { asked: { readonly from: number; readonly count: number }; answer: readonly RefusedShown[] };
  refusedCsv: { asked: Record<never, never>; answer: Blob };
  mapping: { asked: Record<never, never>; answer: Mapping };
  comment: { asked: { readonly index: number }; answer: CommentShown };
  commit: { asked: { readonly corrections: OverCorrections }; answer: Receipt };
};
export type Name = keyof Questions;
export type Asked<N extends Name> = Questions[N]["asked"];
export type Answer<N extends Name> = Questions[N]["answer"];

/** How far long work is. */
export type Step = Progress["step"] | "arrive" | "held" | "send" | PaceOfCommit["step"];
export type Pace = { readonly step: Step; readonly done: number; readonly of: number };

export type ToWorker = { readonly id: number; readonly name: Name; readonly asked: Asked<Name> } | { readonly stop: number };
export type FromWorker =
  | { readonly id: number; readonly answer: Answer<Name> }
  | { readonly id: number; readonly pace: Pace }
  | { readonly id: number; readonly stopped: true }
  | { readonly id: number; readonly failed: { readonly name: string; readonly message: string } };
