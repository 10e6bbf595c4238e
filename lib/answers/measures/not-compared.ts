/** Two groups that can't be compared as asked, and why: segments stand in both, or a score isn't one of those held. */
export class NotCompared extends RangeError {
  readonly because: "in-both" | "score";

  constructor(because: NotCompared["because"], message: string) {
    super(message);
    this.because = because;
  }
}
