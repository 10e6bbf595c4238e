const mostKept = 64;

/** Answers by stamp, the least recently asked dropped first. A stamp names its state, so an entry never goes stale. */
export function answerCache<Answer>() {
  const kept = new Map<string, Promise<Answer>>();
  return (stamp: string, work: () => Promise<Answer>): Promise<Answer> => {
    const held = kept.get(stamp);
    const answer = held ?? work();
    kept.delete(stamp);
    kept.set(stamp, answer);
    // an answer that failed is not kept: the next to ask tries again
    if (!held) answer.catch(() => kept.delete(stamp));
    const oldest = kept.keys().next().value;
    if (kept.size > mostKept && oldest !== undefined) kept.delete(oldest);
    return answer;
  };
}
