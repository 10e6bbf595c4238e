import { eventTypesByOrigin, fieldOf, labelOfCode } from "@/lib/codebook";
import type { Option } from "./choose";

/** The catalogue of events, each found by its label, its origin and the spellings that mean it. */
export function eventOptions(): readonly Option[] {
  const field = fieldOf("event", "eventType");
  const spellings = Object.entries((field.kind === "code" && field.values) || {});
  return Object.entries(eventTypesByOrigin).flatMap(([origin, types]) =>
    types.map((type) => ({
      id: type,
      label: labelOfCode(type),
      group: origin.replace("-", " "),
      words: [origin, ...spellings.filter(([, code]) => code === type).map(([words]) => words)].join(" "),
    })),
  );
}
