import type { Table } from "./check-table";

/** More partial tables than this and the answer would not come; the caller is told. */
const mostPartials = 500_000;

/** P values within this of each other are the same: the tables are equally likely, only their rounding differs. */
const nearlyEqual = 1e-7;

/** Partial tables that leave the same row totals open: how likely each was, as logarithms without the common constant, and how often. */
interface Node {
  readonly open: readonly number[];
  readonly pasts: Map<number, { log: number; weight: number }>;
}

/**
 * The exact two-sided p of an r × c table: the probability, margins given, of all tables no more likely than the one seen.
 * Columns are filled one by one; partial tables that leave the same totals open are kept together; the last two columns are summed at once
 * from a sorted list. Freeman GH, Halton JH. Biometrika 1951;38:141-149 (the test).
 * @throws RangeError when there are too many tables
 */
export function exactP({ counts, rowTotals, columnTotals, n }: Table): number {
  const logFactorial = logFactorials(n);
  const log = (column: readonly number[]) => -column.reduce((sum, count) => sum + (logFactorial[count] as number), 0);
  const [rows, columns] = rowTotals.length <= columnTotals.length ? [rowTotals, columnTotals] : [columnTotals, rowTotals];
  const seen = counts.reduce((sum, row) => sum + log(row), 0);
  const totals = [...columns].sort((a, b) => a - b);
  const constant = -log(rows) - log(columns) - (logFactorial[n] as number);
  let nodes: Map<string, Node> = new Map([["", { open: rows, pasts: new Map([[0, { log: 0, weight: 1 }]]) }]]);
  for (const total of totals.slice(0, -2)) nodes = fillColumn(nodes, total, log);
  let p = 0;
  for (const node of nodes.values()) p += finish(node, totals.at(-2) as number, seen + nearlyEqual, log, constant);
  return Math.min(1, p);
}

function fillColumn(nodes: Map<string, Node>, total: number, log: (column: readonly number[]) => number): Map<string, Node> {
  const next = new Map<string, Node>();
  let partials = 0;
  for (const { open, pasts } of nodes.values()) {
    eachColumn(open, total, (column) => {
      const left = open.map((row, i) => row - (column[i] as number)).sort((a, b) => a - b);
      const key = left.join();
      const node = next.get(key) ?? { open: left, pasts: new Map() };
      next.set(key, node);
      const own = log(column);
      for (const past of pasts.values()) partials += addPast(node, past.log + own, past.weight);
      if (partials > mostPartials) throw new RangeError(`fisherExact requires fewer than ${mostPartials} partial tables, received more`);
    });
  }
  return next;
}

/** Equal likelihoods are kept once, however they were reached. @returns 1 when it was a new one */
function addPast(node: Node, log: number, weight: number): 0 | 1 {
  const key = Math.round(log * 1e9);
  const held = node.pasts.get(key);
  if (held) held.weight += weight;
  else node.pasts.set(key, { log, weight });
  return held ? 0 : 1;
}

/** The probability of all tables from this node on that are no more likely than the one seen. */
function finish({ open, pasts }: Node, total: number, most: number, log: (column: readonly number[]) => number, constant: number): number {
  const ends: number[] = [];
  eachColumn(open, total, (column) => ends.push(log(column) + log(open.map((row, i) => row - (column[i] as number)))));
  const sorted = Float64Array.from(ends).sort();
  const sums = new Float64Array(sorted.length + 1);
  sorted.forEach((end, i) => {
    sums[i + 1] = (sums[i] as number) + Math.exp(end + constant);
  });
  let p = 0;
  for (const past of pasts.values()) p += past.weight * Math.exp(past.log) * (sums[countAtMost(sorted, most - past.log)] as number);
  return p;
}

/** Every way to fill a column of this total within the open row totals. */
function eachColumn(open: readonly number[], total: number, visit: (column: readonly number[]) => void): void {
  const column = new Array<number>(open.length).fill(0);
  const roomAfter = open.map((_, i) => open.slice(i + 1).reduce((sum, row) => sum + row, 0));
  const fill = (row: number, left: number): void => {
    if (row === open.length - 1) {
      column[row] = left;
      visit(column);
      return;
    }
    const most = Math.min(left, open[row] as number);
    for (let count = Math.max(0, left - (roomAfter[row] as number)); count <= most; count++) {
      column[row] = count;
      fill(row + 1, left - count);
    }
  };
  fill(0, total);
}

function countAtMost(sorted: Float64Array, t: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((sorted[middle] as number) <= t) low = middle + 1;
    else high = middle;
  }
  return low;
}

function logFactorials(n: number): Float64Array {
  const logs = new Float64Array(n + 1);
  for (let i = 2; i <= n; i++) logs[i] = (logs[i - 1] as number) + Math.log(i);
  return logs;
}
