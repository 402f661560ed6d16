// Files on disk for the commands: read with a plain answer when that fails, write so that nothing is ever half there.
//
// A file is written new beside the old one, flushed, and renamed over it (POSIX rename is atomic); then the folder is flushed,
// so that a power cut leaves the old file or the new one, whole.
// Does not know: what is in a file.
import {
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** No file of ours is larger; what is, is something else by mistake. */
const mostBytes = 20 * 1024 * 1024;

/** Where Benchday itself lies: lessons, kits and the demo come with it. */
export const ownFolder = findOwnFolder();

/** @returns the bytes of a file, or a code why not. */
export function readBytes(
  path: string,
): { bytes: Uint8Array } | { code: "cli.noSuchFile" | "cli.isFolder" | "cli.notReadable" | "cli.tooLarge"; path: string } {
  try {
    const stat = statSync(path);
    if (stat.isDirectory()) return { code: "cli.isFolder", path };
    if (stat.size > mostBytes) return { code: "cli.tooLarge", path };
    return { bytes: readFileSync(path) };
  } catch (fault) {
    return { code: (fault as NodeJS.ErrnoException).code === "ENOENT" ? "cli.noSuchFile" : "cli.notReadable", path };
  }
}

/** @returns the text of a file in UTF-8, or null where there is none that can be read. */
export function readText(path: string): string | null {
  const read = readBytes(path);
  return "bytes" in read ? new TextDecoder("utf-8").decode(read.bytes) : null;
}

/** Names of the entries of a folder in a fixed order; empty where there is none. */
export function listFolder(path: string): readonly string[] {
  try {
    return readdirSync(path).sort();
  } catch {
    return [];
  }
}

/** @returns null when the file is safely there, else the code why not; what was there before is then untouched. */
export function writeSafely(
  path: string,
  content: string | Uint8Array,
): { code: "cli.notWritable"; path: string; reason: string } | null {
  const folder = dirname(resolve(path));
  const fresh = join(folder, `.${basename(path)}.new-${process.pid}`);
  try {
    makeFolder(folder);
    removeLeftovers(folder, path);
    const handle = openSync(fresh, "w");
    try {
      const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
      let written = 0;
      while (written < bytes.length) written += writeSync(handle, bytes, written);
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(fresh, path);
    flushFolder(folder);
    return null;
  } catch (fault) {
    try {
      rmSync(fresh, { force: true });
    } catch {
      // Where the folder itself is the trouble there is nothing to clear away.
    }
    return { code: "cli.notWritable", path, reason: (fault as NodeJS.ErrnoException).code ?? "unknown" };
  }
}

export const isFolder = (path: string): boolean => existsSync(path) && statSync(path).isDirectory();

/** Makes a folder and those above it, from the top; Node's own recursion never ends where a parent refuses with "not found". */
function makeFolder(folder: string): void {
  const missing: string[] = [];
  for (let at = folder; !existsSync(at) && dirname(at) !== at; at = dirname(at)) missing.unshift(at);
  for (const at of missing) mkdirSync(at);
}

/** A write that was killed leaves its unfinished file; the next write to the same path clears it away. */
function removeLeftovers(folder: string, path: string): void {
  const start = `.${basename(path)}.new-`;
  for (const name of readdirSync(folder)) {
    if (!name.startsWith(start)) continue;
    const owner = Number(name.slice(start.length));
    if (owner !== process.pid && !isRunning(owner)) rmSync(join(folder, name), { force: true });
  }
}

function isRunning(id: number): boolean {
  if (!Number.isInteger(id) || id <= 0) return false;
  try {
    process.kill(id, 0);
    return true;
  } catch (fault) {
    return (fault as NodeJS.ErrnoException).code === "EPERM";
  }
}

function flushFolder(folder: string): void {
  try {
    const handle = openSync(folder, "r");
    fsyncSync(handle);
    closeSync(handle);
  } catch {
    // Some systems do not let a folder be opened; the rename is then as safe as that system makes it.
  }
}

/** The built file lies in dist/, the source in src/cli/: in both cases the folder above that holds package.json. */
function findOwnFolder(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "package.json")) && dirname(folder) !== folder) folder = dirname(folder);
  return folder;
}
