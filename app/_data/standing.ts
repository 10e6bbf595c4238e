import { cache } from "react";
import { today } from "@/lib/answers";
import { registry } from "./registry";

/** How the registry stands, asked once a request: by the line of page names, and by Today. */
export const standing = cache(async () => today(await registry()));

/**
 * Why the registry can't be opened, in its own words; `null` when it is open. By name, not by class: what opened it may be another
 * bundle of the server with a class of its own.
 */
export async function whyNotOpen(): Promise<string | null> {
  try {
    await registry();
    return null;
  } catch (error) {
    if (error instanceof Error && error.name === "RegistryNotOpened") return error.message;
    throw error;
  }
}
