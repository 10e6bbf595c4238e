import type { Door } from "../_talk/door";
import type { Answer } from "../_talk/messages";
import { askServer } from "./ask-server";
import type { Session } from "./session";

/** What the registry says of itself; asked anew each time, since another tab may have committed. */
export async function openDoor(session: Session, signal: AbortSignal): Promise<Answer<"door">> {
  const response = await askServer("/intake/key", { signal });
  const door = (await response.json()) as Door;
  session.door = door;
  const { unitKey, ...rest } = door;
  return { ...rest, hasKey: unitKey !== null };
}

export async function doorOf(session: Session, signal: AbortSignal): Promise<Door> {
  if (!session.door) await openDoor(session, signal);
  if (!session.door) throw new RangeError("doorOf requires a registry that answers, received none");
  return session.door;
}
