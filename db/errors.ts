/** Why a registry's file could not be opened. */
export type OpenTrouble =
  | "no-registry"
  | "not-a-registry"
  | "damaged"
  | "newer-registry"
  | "folder-shared"
  | "folder-not-writable"
  | "sqlite-too-old"
  | "pragma-refused"
  | "busy";

/** The registry's file could not be opened. `trouble` is for programs, the message for people. */
export class RegistryNotOpened extends Error {
  override readonly name = "RegistryNotOpened";
  readonly trouble: OpenTrouble;

  constructor(trouble: OpenTrouble, message: string, cause?: unknown) {
    super(message, { cause });
    this.trouble = trouble;
  }
}

/** SQLite's own code of an error (`SQLITE_BUSY`), or an empty string. */
export function sqliteCode(error: unknown): string {
  return error instanceof Error && "code" in error && typeof error.code === "string" ? error.code : "";
}
