// Where the engine starts: as a worker it answers its owner; loaded into the page itself it leaves its function there.
//
// Built as one classic script and packed into the file; the page unpacks it when the first question is asked.
// Does not know: questions, answers.
import { serve } from "./serve.ts";
import type { ToEngine } from "./wire.ts";

const scope = globalThis as unknown as {
  document?: unknown;
  benchdayEngine?: typeof serve;
  onmessage: ((event: { readonly data: ToEngine }) => void) | null;
  postMessage(message: unknown): void;
};

if (scope.document !== undefined) scope.benchdayEngine = serve;
else {
  const take = serve((message) => scope.postMessage(message));
  scope.onmessage = (event) => take(event.data);
  scope.postMessage({ say: "here" });
}
