/**
 * Whether an error is of a kind, by its name: the registry is opened once a process, by whichever bundle asked first, and its errors are of
 * that bundle's classes, which `instanceof` takes for others.
 */
export function isNamed<E extends Error>(error: unknown, name: E["name"]): error is E {
  return error instanceof Error && error.name === name;
}
