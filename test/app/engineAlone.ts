// A page of the engine alone, for its tests: the shipped file with this script in place of the screens.
//
// Does not know: screens.
import type { EngineMemory } from "../../src/app/engine/startEngine.ts";
import { startEngine } from "../../src/app/engine/startEngine.ts";

const shelf = new Map<string, unknown>();
const memory: EngineMemory = {
  recall: async (hash) => shelf.get(hash),
  remember: async (hash, value) => void shelf.set(hash, value),
};
/** What tests use: an engine, a way to start another one, and what was kept. */
Object.assign(globalThis, { engine: startEngine(memory), another: () => startEngine(memory), shelf });
performance.mark("usable");
