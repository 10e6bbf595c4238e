/** A column or a constraint of a table, one a line. */
export function createTable(name: string, parts: readonly string[]): string {
  return `CREATE TABLE ${name} (\n${parts.map((part) => `  ${part}`).join(",\n")}\n) STRICT;`;
}

export function named(name: string, rule: string): string {
  return `CONSTRAINT ${name} CHECK (${rule})`;
}

/** A trigger that refuses. The message is what the caller's error says. */
export function refuse(name: string, on: string, message: string, when?: string): string {
  const condition = when ? `\nWHEN ${when}` : "";
  return `CREATE TRIGGER ${name} BEFORE ${on}${condition}\nBEGIN SELECT RAISE(ABORT, '${message}'); END;`;
}

/** Rows of a person go only while an erasure runs. */
export const notErasing = "(SELECT running FROM erasure) = 0";
