import type { Answer, OverCorrections, Pace, Said } from "../_talk/messages";
import type { Receipt } from "../_talk/receipt";
import type { Arrived, View } from "../_talk/view";

/** Long work in hand: what it is, and how far. */
export type Working = { readonly what: "arrive" | "key" | "prepare" | "commit"; readonly pace: Pace | null };

/** The key in this tab. A recovery code is held only until it has been put away. */
export type KeyState =
  | { readonly is: "shut" }
  | { readonly is: "open"; readonly how: "made" | "opened" | "recovered" | "sealed"; readonly recoveryCode: string | null };

export type IntakeState = {
  /** `null` until the browser has said whether it has the means to strip a file. */
  readonly able: boolean | null;
  readonly door: Answer<"door"> | null;
  readonly arrived: readonly Arrived[];
  readonly key: KeyState;
  readonly said: Said;
  /** Whose word holds of fields corrected by hand. */
  readonly corrections: OverCorrections;
  readonly view: View | null;
  /** What was said has changed since the view was made. */
  readonly stale: boolean;
  readonly working: Working | null;
  /** What went wrong last, in words. */
  readonly trouble: string | null;
  readonly receipt: Receipt | null;
  /** For those who hear the page. */
  readonly spoken: string;
};
