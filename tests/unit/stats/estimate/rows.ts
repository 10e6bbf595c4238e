import type { Note } from "@/lib/stats";

export const codes = (notes: readonly Note[]) => notes.map(({ code }) => code);
export const range = (n: number) => Array.from({ length: n }, (_, i) => i);
/** Numbers that look irregular and are the same each time. */
export const scattered = (n: number, from = 20, width = 30) => range(n).map((i) => from + ((i * 37 + (i % 7) * 11) % (width * 10)) / 10);
