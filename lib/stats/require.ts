/**
 * What a caller must hold to. Messages read "function requires …, received …".
 * Each check returns nothing and throws, so that a method reads as a list of its requirements.
 */

/** @throws TypeError when a value is not a finite number; the message gives the place, counted from zero */
export function requireFinite(caller: string, name: string, values: ArrayLike<number>): void {
  for (let i = 0; i < values.length; i++) {
    const value: unknown = values[i];
    if (typeof value !== "number" || !Number.isFinite(value)) {
      throw new TypeError(`${caller} requires finite numbers in ${name}, received ${describe(value)} at ${i}`);
    }
  }
}

/** @throws RangeError when the confidence is not between 0 and 1 (both ends left out) */
export function requireConfidence(caller: string, confidence: number): void {
  if (!(confidence > 0 && confidence < 1)) {
    throw new RangeError(`${caller} requires a confidence between 0 and 1, received ${confidence}`);
  }
}

/** @throws RangeError when two inputs that describe the same rows differ in length */
export function requireSameLength(caller: string, first: string, firstLength: number, second: string, secondLength: number): void {
  if (firstLength !== secondLength) {
    throw new RangeError(`${caller} requires ${second} as long as ${first} (${firstLength}), received ${secondLength}`);
  }
}

/** @throws RangeError when a number is not a whole number of at least `least` */
export function requireCount(caller: string, name: string, value: number, least = 0): void {
  if (!Number.isInteger(value) || value < least) {
    throw new RangeError(`${caller} requires ${name} to be a whole number of at least ${least}, received ${describe(value)}`);
  }
}

/** @throws RangeError when a number is not above zero and finite */
export function requirePositive(caller: string, name: string, value: number): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new RangeError(`${caller} requires ${name} above zero, received ${describe(value)}`);
  }
}

/** @throws RangeError when a probability lies outside 0 to 1 */
export function requireProbability(caller: string, name: string, value: number): void {
  if (!(value >= 0 && value <= 1)) throw new RangeError(`${caller} requires ${name} from 0 to 1, received ${describe(value)}`);
}

/** @throws RangeError when there is nothing to compute on */
export function requireSome(caller: string, what: string, count: number, least = 1): void {
  if (count < least) throw new RangeError(`${caller} requires at least ${inWords(least)} ${what}, received ${count}`);
}

/** Numbers are given, anything else is described: a text may hold a name. */
function describe(value: unknown): string {
  if (typeof value === "number") return String(value);
  return value === null ? "null" : `a value of type ${typeof value}`;
}

function inWords(count: number): string {
  return ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"][count] ?? String(count);
}
