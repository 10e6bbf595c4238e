/** Gives writers their turn, one after the other, in the order in which they asked: while one works in another thread, the next one waits. */
export type Turns = <T>(work: () => T | Promise<T>) => Promise<T>;

export function inTurn(): Turns {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const turn = last.then(work);
    // whoever failed has told its own caller
    last = turn.catch(() => undefined);
    return turn;
  };
}
