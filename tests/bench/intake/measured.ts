export type Cost = { readonly wallMs: number; readonly cpuMs: number };

/** What work costs: wall time, and processor time of the whole process, its collector and helpers included. */
export async function costOf<T>(work: () => T | Promise<T>): Promise<Cost & { readonly result: T }> {
  // what an earlier measurement left is nobody's cost; a process started without --expose-gc has no such call
  globalThis.gc?.();
  const [wall, cpu] = [performance.now(), process.cpuUsage()];
  const result = await work();
  const { user, system } = process.cpuUsage(cpu);
  return { result, wallMs: performance.now() - wall, cpuMs: (user + system) / 1000 };
}

export function line(name: string, { wallMs, cpuMs }: Cost): string {
  return `${name.padEnd(44)} ${cpuMs.toFixed(0).padStart(7)} ms processor  ${wallMs.toFixed(0).padStart(7)} ms`;
}
