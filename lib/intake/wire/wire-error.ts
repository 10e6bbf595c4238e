/** A line that may not come in: where, which field, and of what kind the fault is; never what stood there. */
export class WireError extends Error {
  override readonly name = "WireError";
  constructor(
    readonly line: number,
    readonly field: string | null,
    readonly kind: string,
  ) {
    super(`decodeLine requires stripped rows of the codebook, received ${kind}${field === null ? "" : ` in ${field}`} on line ${line}`);
  }
}
