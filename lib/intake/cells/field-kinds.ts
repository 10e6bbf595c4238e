import type { Field } from "@/lib/codebook";

export type CountField = Extract<Field, { kind: "count" }>;
export type NumberField = Extract<Field, { kind: "number" }>;
