import { expect } from "vitest";
import { type CheckValue, check, toleranceOf } from "../../external/stat-checks";

/**
 * Compares our fields with a check's: those that the source prints, at its tolerance, and those computed with R at 1e-8.
 * Each field given must be one of the check's, so that a misspelt one can't pass.
 */
export function expectAsChecked(id: string, ours: Readonly<Record<string, unknown>>): void {
  const found = check(id);
  for (const [field, value] of Object.entries(ours)) {
    const printed = found.expected[field];
    const computed = found.computed?.[field];
    expect(printed ?? computed, `${id} holds ${field}`).toBeDefined();
    if (printed !== undefined) expectNear(value, printed, toleranceOf(found, field), `${id} ${field}`);
    if (computed !== undefined) expectNear(value, computed, 1e-8 * sizeOf(computed), `${id} ${field}, computed`);
  }
}

function expectNear(ours: unknown, theirs: CheckValue, tolerance: number, at: string): void {
  if (Array.isArray(theirs)) {
    expect(ours, at).toHaveLength(theirs.length);
    theirs.forEach((one, i) => {
      expectNear((ours as readonly unknown[])[i], one, tolerance, `${at}[${i}]`);
    });
  } else if (typeof theirs === "number") {
    expect(typeof ours, at).toBe("number");
    // 1e-12: an answer printed with all its digits still has its last one rounded.
    expect(Math.abs((ours as number) - theirs), `${at}: ours ${ours}, theirs ${theirs}`).toBeLessThanOrEqual(tolerance + 1e-12);
  } else expect(ours, at).toBe(theirs);
}

function sizeOf(value: CheckValue): number {
  return typeof value === "number" ? Math.max(1, Math.abs(value)) : 1;
}
