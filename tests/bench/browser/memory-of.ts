import { readdirSync, readFileSync } from "node:fs";

/** Memory of a process and those it started, in MB: what they hold now, and the sum of the most that each ever held. */
export function memoryOf(pid: number | undefined): { readonly now: number; readonly most: number } {
  const all = readdirSync("/proc").filter((name) => /^\d+$/.test(name));
  const status = new Map(all.flatMap((id) => entryOf(id)));
  const own = [...status.keys()].filter((id) => isBelow(id, String(pid), status));
  const sum = (field: "VmRSS" | "VmHWM") => Math.round(own.reduce((total, id) => total + (status.get(id)?.[field] ?? 0), 0) / 1000);
  return { now: sum("VmRSS"), most: sum("VmHWM") };
}

type Entry = { readonly PPid: number; readonly VmRSS: number; readonly VmHWM: number };

/** Kilobytes as the kernel counts them. A process that has ended meanwhile has none. */
function entryOf(id: string): [string, Entry][] {
  try {
    const text = readFileSync(`/proc/${id}/status`, "utf8");
    const of = (field: string) => Number(new RegExp(`^${field}:\\s+(\\d+)`, "m").exec(text)?.[1] ?? 0);
    return [[id, { PPid: of("PPid"), VmRSS: of("VmRSS"), VmHWM: of("VmHWM") }]];
  } catch {
    return [];
  }
}

function isBelow(id: string, top: string, status: ReadonlyMap<string, Entry>): boolean {
  if (id === top) return true;
  const parent = status.get(id)?.PPid;
  return parent !== undefined && parent > 1 && isBelow(String(parent), top, status);
}
