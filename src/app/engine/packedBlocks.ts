// The blocks of data behind the page's script: what is there, and when.
//
// The script runs while the browser still reads the rest of the file, so a block may not have come yet.
// Does not know: what is in a block.

export type BlockName = "loader" | "engine" | "shipped" | "later" | "solver";

/** @returns the text of a block as soon as it is read whole; null where the file lacks it. */
export async function packedBlock(name: BlockName): Promise<string | null> {
  const found = () => document.getElementById(`benchday-${name}`);
  // A block counts only when the browser has begun what follows it: before that its text may be half there.
  if (!found()?.nextElementSibling && document.readyState === "loading")
    await whenRead(() => Boolean(found()?.nextElementSibling));
  return found()?.textContent ?? null;
}

/** Waits while the browser reads the file, until it is there or the file is at its end. */
function whenRead(isThere: () => boolean): Promise<void> {
  return new Promise((resolve) => {
    const look = new MutationObserver(() => {
      if (isThere()) done();
    });
    const done = () => {
      look.disconnect();
      document.removeEventListener("DOMContentLoaded", done);
      resolve();
    };
    look.observe(document.body, { childList: true });
    document.addEventListener("DOMContentLoaded", done);
  });
}

/** A name for this state of engine and shipped files, made by the build. */
export function builtVersion(): string {
  return document.getElementById("benchday-engine")?.dataset.version ?? "unbuilt";
}
