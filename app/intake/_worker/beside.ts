import type { Beside } from "../_talk/beside";
import { askServer } from "./ask-server";
import type { Session, Work } from "./session";

/** Numbers joined and fields corrected by hand, asked once a commit. */
export async function besideHeld(session: Session, { signal }: Work): Promise<Beside> {
  session.beside ??= (await (await askServer("/intake/beside", { signal })).json()) as Beside;
  return session.beside;
}
