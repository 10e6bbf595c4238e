import type { Value } from "@/lib/codebook";
import { conditionField } from "./fields";

/**
 * A value of a field as an address or a command line writes it; `null` stands for *not recorded*.
 * @example valueOfText("canalVented", "true") // => true
 */
export function valueOfText(field: string, text: string): Value {
  const kind = conditionField(field)?.kind;
  if (text === "null") return null;
  if (kind === "flag") return text === "true";
  return kind === "count" || kind === "number" ? Number(text) : text;
}
