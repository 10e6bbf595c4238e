import { conditionField, conditionUnit } from "./fields";
import { parseSplitField } from "./split";

/**
 * A split in words.
 * @example describeSplit(["bone", "gainMm:30/50"]) // => "bone and gain in bands (cut at 30 and 50 mm)"
 */
export function describeSplit(by: readonly string[]): string {
  return by.map(describeField).join(" and ");
}

function describeField(text: string): string {
  const { id, cuts } = parseSplitField(text);
  const field = conditionField(id);
  const label = lowerFirst(field?.label ?? id);
  if (cuts.length === 0) return label;
  const unit = conditionUnit(id);
  return `${label} in bands (cut at ${listed(cuts.map(String))}${unit === null ? "" : ` ${unit}`})`;
}

/** `Gain at last follow-up` → `gain at last follow-up`; a name that is letters alone keeps them: `mLDFA`, `MPTA`. */
export function lowerFirst(label: string): string {
  return /^[A-Z][a-z ]/.test(label) ? `${label.charAt(0).toLowerCase()}${label.slice(1)}` : label;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
