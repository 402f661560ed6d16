// Runs code of the page's own that lies packed in the file.
//
// A script from memory, as the page's policy allows; an older browser that cannot unpack has the loader do it.
// Does not know: what the code does.
import { EngineBroken } from "./engine.ts";
import { gunzip } from "./gunzip.ts";
import { runScript } from "./openHost.ts";
import { type BlockName, packedBlock } from "./packedBlocks.ts";

/** @throws EngineBroken "missing" where the file lacks the block, "broken" where it does not run. */
export async function runPacked(name: BlockName): Promise<void> {
  const packed = await packedBlock(name);
  if (packed === null || packed === "") throw new EngineBroken("missing", name);
  const bytes = await gunzip(packed);
  await runScript(bytes === null ? await unpackedByLoader(packed) : new TextDecoder().decode(bytes));
}

async function unpackedByLoader(packed: string): Promise<string> {
  const scope = globalThis as unknown as { benchdayUnpack?: (packed: string) => Promise<string> };
  if (scope.benchdayUnpack === undefined) await runScript((await packedBlock("loader")) ?? "");
  if (scope.benchdayUnpack === undefined) throw new EngineBroken("broken", "the loader did not run");
  return scope.benchdayUnpack(packed);
}
