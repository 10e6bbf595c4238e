import type { Registry } from "@/lib/registry";
import { canonicalQuestion, type Question } from "./stamp";

/** Keep the question under its stamp, so that the result reference can be asked again. */
export async function keepQuestion(registry: Registry, stamp: string, question: Question): Promise<void> {
  await registry.keepQuestion(stamp, canonicalQuestion(question));
}
