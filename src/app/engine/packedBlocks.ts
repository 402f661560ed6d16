// The blocks of data behind the page's script: what is there, and when.
//
// The script runs while the browser still reads the rest of the file, so a block may not have come yet.
// Does not know: what is in a block.

export type BlockName = "loader" | "engine" | "files" | "solver";

/** @returns the text of a block once the file is read; null where the file lacks it. */
export async function packedBlock(name: BlockName): Promise<string | null> {
  const found = () => document.getElementById(`benchday-${name}`);
  // A block counts only when the browser has begun what follows it: before that its text may be half there.
  if (found()?.nextElementSibling) return found()?.textContent ?? null;
  if (document.readyState === "loading")
    await new Promise((resolve) => document.addEventListener("DOMContentLoaded", resolve, { once: true }));
  return found()?.textContent ?? null;
}

/** A name for this state of engine and shipped files, made by the build. */
export function builtVersion(): string {
  return document.getElementById("benchday-engine")?.dataset.version ?? "unbuilt";
}
