/** Lines of a stream of UTF-8. */
export async function* linesOf(stream: ReadableStream<Uint8Array> | null): AsyncGenerator<string> {
  const decoder = new TextDecoder();
  const reader = stream?.getReader();
  let rest = "";
  for (let read = await reader?.read(); read && !read.done; read = await reader?.read()) {
    const lines = (rest + decoder.decode(read.value, { stream: true })).split("\n");
    rest = lines.pop() ?? "";
    yield* lines;
  }
  rest += decoder.decode();
  if (rest !== "") yield rest;
}
