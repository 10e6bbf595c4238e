/** What is made of an answer, made once: it is kept as long as the answer is, and its drawings with it. */
export function once<Answer extends object, Rest extends readonly unknown[], Made>(
  make: (answer: Answer, ...rest: Rest) => Made,
): (answer: Answer, ...rest: Rest) => Made {
  const kept = new WeakMap<Answer, Made>();
  return (answer, ...rest) => {
    const made = kept.get(answer) ?? make(answer, ...rest);
    kept.set(answer, made);
    return made;
  };
}
