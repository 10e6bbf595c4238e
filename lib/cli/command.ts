/** A command of the command line. `run` answers one documented object; `say` writes it for a person when `--json` is not given. */
export type Command = {
  readonly words: string;
  readonly about: string;
  readonly run: (args: readonly string[]) => Promise<Answer>;
};

export type Answer = {
  /** What `--json` prints. A string is printed as it stands (templates). */
  readonly answer: unknown;
  /** What a person reads. */
  readonly text: string;
  readonly exit: 0 | 1;
};

export function done(answer: unknown, text: string): Answer {
  return { answer, text, exit: 0 };
}
