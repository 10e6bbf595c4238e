import path from "node:path";
import { openRegistry, type Registry } from "@/lib/registry";

const held = globalThis as typeof globalThis & { lengthbookRegistry?: Promise<Registry> };

/** The registry that these pages serve: opened once a process, at the first question, never at import. */
export function registry(): Promise<Registry> {
  held.lengthbookRegistry ??= open();
  return held.lengthbookRegistry;
}

async function open(): Promise<Registry> {
  try {
    const opened = await openRegistry(folder(), { create: true });
    // without this the server's end leaves the write-ahead log beside the file, and a copy of the file alone would lack it
    process.once("exit", () => opened.close());
    return opened;
  } catch (error) {
    // a registry that could not be opened is tried again at the next question, when the reason may be gone
    delete held.lengthbookRegistry;
    throw error;
  }
}

function folder(): string {
  return path.resolve(/*turbopackIgnore: true*/ process.env.LENGTHBOOK_DATA ?? ".data/registry");
}

/** Whether these pages serve the demo: its registry has a folder of its own name, in which no real case is ever kept. */
export function isDemo(): boolean {
  return path.basename(folder()) === "demo";
}
