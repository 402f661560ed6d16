// Unpacks and starts HiGHS, the solver for orders, when an order is asked for first.
//
// The package wants to fetch its WebAssembly, which a page without a network cannot do, so it is handed over ready made.
// Does not know: what is solved.
import highs from "highs";
import { highsSolver, type IntegerSolver } from "../../school/order/index.ts";
import { unpack } from "./unpack.ts";

/** What the package's types leave out: it hands over the imports and takes the running instance. */
interface Handing {
  readonly instantiateWasm: (imports: WebAssembly.Imports, done: (instance: WebAssembly.Instance) => void) => void;
}

/** @param packed the WebAssembly of the package of the same version, gzip as base64. */
export async function loadSolver(packed: string): Promise<IntegerSolver> {
  const compiled = await WebAssembly.compile(await unpack(packed));
  let fail: (fault: unknown) => void = () => {};
  const failed = new Promise<never>((_, reject) => {
    fail = reject;
  });
  const handing: Handing = {
    instantiateWasm: (imports, done) => void WebAssembly.instantiate(compiled, imports).then(done, fail),
  };
  const start = highs as (options: unknown) => ReturnType<typeof highs>;
  return highsSolver(await Promise.race([start(handing), failed]));
}
