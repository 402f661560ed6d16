// A tiny page for trying the engine alone. Does not know: screens.
import { startEngine } from "./startEngine.ts";

(globalThis as unknown as { engine: unknown }).engine = startEngine();
