import { chmodSync, closeSync, existsSync, mkdirSync, openSync, readdirSync, statSync } from "node:fs";
import { join } from "node:path";
import { RegistryNotOpened } from "./errors";

export const registryFile = "registry.sqlite";
const fileNames = [registryFile, `${registryFile}-wal`, `${registryFile}-shm`] as const;
const others = 0o077;
const refusals: ReadonlySet<unknown> = new Set(["EACCES", "EPERM", "EROFS", "ENOTDIR", "EEXIST"]);

/** The system's refusal as one sentence for people. */
function told(error: unknown, folder: string): unknown {
  const code = error instanceof Error && "code" in error ? error.code : undefined;
  if (!refusals.has(code)) return error;
  return new RegistryNotOpened(
    "folder-not-writable",
    `the registry requires a folder that it owns and can write to, received ${folder}`,
    error,
  );
}

/** Closes a folder to other users of the machine, but only when nothing but a registry is in it: it might be anybody's. */
function closeToOthers(folder: string): void {
  if ((statSync(folder).mode & others) === 0) return;
  const files = readdirSync(folder);
  if (files.length > 0 && !files.includes(registryFile)) {
    throw new RegistryNotOpened("folder-shared", `the registry requires a folder of its own, received ${folder} with other files in it`);
  }
  chmodSync(folder, 0o700);
}

function prepare(folder: string, path: string): void {
  mkdirSync(folder, { recursive: true, mode: 0o700 });
  closeToOthers(folder);
  if (!existsSync(path)) closeSync(openSync(path, "a", 0o600));
  const files = fileNames
    .map((name) => join(/* turbopackIgnore: true */ folder, name))
    .filter((file) => existsSync(/* turbopackIgnore: true */ file));
  for (const file of files) if ((statSync(file).mode & others) !== 0) chmodSync(file, 0o600);
}

/**
 * The path of the registry's file in its folder, the folder 0700 and the files 0600 (SQLite gives -wal and -shm the mode of the file).
 * @throws RegistryNotOpened when there is none and none is to be made, or the folder is not for it alone
 */
export function registryPath(folder: string, { create = false } = {}): string {
  const path = join(folder, registryFile);
  if (!create && !existsSync(path)) throw new RegistryNotOpened("no-registry", `no registry in ${folder}`);
  try {
    prepare(folder, path);
  } catch (error) {
    throw told(error, folder);
  }
  return path;
}
