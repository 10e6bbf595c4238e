import { BodyTooLarge } from "./body-too-large";

/** A sheet of 64 MB may come as three times as much: each stripped cell is named. */
export const mostBytes = 256 * 1024 * 1024;

/**
 * The bytes of a commit as they come. `onBytes` hears how many have come, and how many will.
 * @throws BodyTooLarge
 */
export async function* bytesOf(request: Request, onBytes: (bytes: number, of: number) => void): AsyncGenerator<Uint8Array> {
  const of = Number(request.headers.get("content-length") ?? 0);
  if (of > mostBytes) throw new BodyTooLarge();
  const reader = request.body?.getReader();
  let bytes = 0;
  try {
    for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
      bytes += read.value.length;
      if (bytes > mostBytes) throw new BodyTooLarge();
      onBytes(bytes, of);
      yield read.value;
    }
  } finally {
    // whoever turns away before the end wants no more of it
    await reader?.cancel();
  }
}
