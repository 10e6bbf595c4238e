/** What is made of a record, made once: it is kept as long as the record is. What else is given must follow from the record. */
export function once<Source extends object, Rest extends readonly unknown[], Made>(
  make: (source: Source, ...rest: Rest) => Made,
): (source: Source, ...rest: Rest) => Made {
  const kept = new WeakMap<Source, Made>();
  return (source, ...rest) => {
    const made = kept.get(source) ?? make(source, ...rest);
    kept.set(source, made);
    return made;
  };
}
