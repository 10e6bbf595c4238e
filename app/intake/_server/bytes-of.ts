import { BodyTooLarge } from "./body-too-large";

/** A sheet of 64 MB may come as three times as much: each stripped cell is named. */
export const mostBytes = 256 * 1024 * 1024;

/**
 * The bytes of a commit as they come.
 * @throws BodyTooLarge
 */
export async function* bytesOf(request: Request): AsyncGenerator<Uint8Array> {
  if (Number(request.headers.get("content-length") ?? 0) > mostBytes) throw new BodyTooLarge();
  const reader = request.body?.getReader();
  let bytes = 0;
  try {
    for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
      bytes += read.value.length;
      if (bytes > mostBytes) throw new BodyTooLarge();
      yield read.value;
    }
  } finally {
    // whoever turns away before the end wants no more of it
    await reader?.cancel();
  }
}
