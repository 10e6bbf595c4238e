type Noted = { readonly text: string };
type Bearer = { readonly label: string; readonly notes: readonly Noted[] };

/** Each note once; where some groups bear it and others don't, their names stand before it. */
export function notesOf(own: readonly Noted[], groups: readonly Bearer[]): readonly string[] {
  const bearers = new Map<string, Set<string>>();
  for (const { label, notes } of groups) for (const { text } of notes) bearers.set(text, new Set([...(bearers.get(text) ?? []), label]));
  const ofGroups = [...bearers].map(([text, labels]) => (labels.size === groups.length ? text : `${[...labels].join(", ")}: ${text}`));
  return [...new Set([...own.map(({ text }) => text), ...ofGroups])].map(asSentence);
}

/** `days from …` → `Days from … .` */
export function asSentence(text: string): string {
  const ended = /[.!?]$/.test(text) ? text : `${text}.`;
  return `${ended.charAt(0).toUpperCase()}${ended.slice(1)}`;
}
