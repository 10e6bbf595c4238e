/** Each column's name, once: a repeated header gets ` #2`, a blank one its place. */
export function nameColumns(cells: readonly string[]): readonly string[] {
  const taken = new Set<string>();
  return cells.map((cell, index) => {
    const base = cell.replace(/\s+/g, " ").trim() || `column ${index + 1}`;
    let name = base;
    for (let n = 2; taken.has(name); n++) name = `${base} #${n}`;
    taken.add(name);
    return name;
  });
}
