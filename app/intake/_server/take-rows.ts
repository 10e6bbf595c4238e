import { type Commit, collectCommit } from "@/lib/intake";
import { BodyTooLarge } from "./body-too-large";

export const mostBytes = 64 * 1024 * 1024;

/**
 * The rows of a commit, line by line as they come.
 * @throws WireError for a line that may not come in or a body that breaks off; BodyTooLarge
 */
export async function takeRows(request: Request): Promise<Commit> {
  if (Number(request.headers.get("content-length") ?? 0) > mostBytes) throw new BodyTooLarge();
  const collector = collectCommit();
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let rest = "";
  let bytes = 0;
  const reader = request.body?.getReader();
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    bytes += read.value.length;
    if (bytes > mostBytes) {
      await reader?.cancel();
      throw new BodyTooLarge();
    }
    const lines = (rest + decoder.decode(read.value, { stream: true })).split("\n");
    rest = lines.pop() ?? "";
    for (const line of lines) collector.take(line);
  }
  if (rest !== "") collector.take(rest);
  return collector.finish();
}
