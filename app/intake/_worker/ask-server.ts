import type { Refusal } from "../_talk/receipt";

/** The server refused, or could not be reached. The message is for people. */
export class ServerRefused extends Error {
  override readonly name = "ServerRefused";
}

/** A commit had been written when it was told to stop. */
export class StopCameTooLate extends ServerRefused {
  constructor(batch: number) {
    super(`The stop came too late: the rows were kept, as batch ${batch}. To take them back, go to Today and take batch ${batch} back.`);
  }
}

const notReached = "Lengthbook’s server could not be reached. It may have been stopped: start it again, then try once more.";

/** A reply that holds what was asked. @throws ServerRefused with the server's own sentence */
export async function askServer(path: string, init: RequestInit): Promise<Response> {
  const response = await fetch(path, init).catch((error: unknown) => {
    if (init.signal?.aborted) throw error;
    throw new ServerRefused(notReached);
  });
  if (response.ok) return response;
  throw new ServerRefused(await sentenceOf(response));
}

async function sentenceOf(response: Response): Promise<string> {
  try {
    return ((await response.json()) as Refusal).message;
  } catch {
    return `The server answered with ${response.status} and said nothing else. Nothing was kept.`;
  }
}
