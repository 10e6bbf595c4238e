import type { Answer, Asked, FromWorker, Name, Pace, ToWorker } from "../_talk/messages";

/** The person stopped the work. Nothing half done is left. */
export class Stopped extends Error {
  override readonly name = "Stopped";
}
/** What the worker said went wrong. The message is a sentence for people, or empty. */
export class WorkFailed extends Error {
  constructor(
    override readonly name: string,
    message: string,
  ) {
    super(message);
  }
}

type Waiting = {
  readonly done: (answer: Answer<Name>) => void;
  readonly failed: (error: Error) => void;
  readonly pace: (pace: Pace) => void;
};
/** Work that was asked for: its answer, and the way to stop it. */
export type Errand<N extends Name> = { readonly answer: Promise<Answer<N>>; readonly stop: () => void };

/** The page's side of the worker in which everything identifying lives. */
export type WorkerDoor = {
  ask<N extends Name>(name: N, asked: Asked<N>, pace?: (pace: Pace) => void): Errand<N>;
  /** Ends the worker with all that it holds. What was asked and not answered is stopped. */
  end(): void;
};

export function openWorker(): WorkerDoor {
  const worker = new Worker(new URL("../intake.worker.ts", import.meta.url), { type: "module" });
  const waiting = new Map<number, Waiting>();
  let last = 0;
  const settle = (id: number) => {
    const one = waiting.get(id);
    waiting.delete(id);
    return one;
  };
  worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
    if ("pace" in data) waiting.get(data.id)?.pace(data.pace);
    else if ("answer" in data) settle(data.id)?.done(data.answer);
    else if ("failed" in data) settle(data.id)?.failed(new WorkFailed(data.failed.name, data.failed.message));
    else settle(data.id)?.failed(new Stopped());
  };
  worker.onerror = () => {
    for (const id of [...waiting.keys()]) settle(id)?.failed(new WorkFailed("WorkerLost", ""));
  };
  return {
    ask<N extends Name>(name: N, asked: Asked<N>, pace: (pace: Pace) => void = () => {}): Errand<N> {
      const id = ++last;
      const answer = new Promise<Answer<Name>>((done, failed) => waiting.set(id, { done, failed, pace }));
      worker.postMessage({ id, name, asked } satisfies ToWorker);
      return { answer: answer as Promise<Answer<N>>, stop: () => worker.postMessage({ stop: id } satisfies ToWorker) };
    },
    end() {
      worker.terminate();
      for (const id of [...waiting.keys()]) settle(id)?.failed(new Stopped());
    },
  };
}
