import type { Table } from "../field";
import { person } from "./person";

export const score = {
  name: "score",
  label: "Scores",
  key: ["person", "scoreCode", "scoreDay"],
  fields: {
    person: person.fields.person,
    scoreCode: {
      kind: "listed",
      pattern: "^[a-z][a-z0-9-]{1,31}$",
      label: "Score",
      role: "plain",
      known: "later",
      required: true,
      aliases: ["score", "prom", "instrument"],
    },
    scoreDay: { kind: "day", label: "Day of score", role: "sensitive", known: "later", required: true, aliases: ["date", "score date"] },
    scoreValue: {
      kind: "number",
      unit: "points",
      hard: [-1000, 1000],
      label: "Score value",
      role: "sensitive",
      known: "later",
      required: true,
      aliases: ["value", "total"],
    },
  },
} as const satisfies Table;
