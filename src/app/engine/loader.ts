// The few lines that a worker starts with: they unpack the engine beside the page and run it.
//
// In a worker the first message is the packed engine. In the page itself only the unpacking is left behind, because there the
// page runs the script. Built as a classic script of its own.
// Does not know: what the engine does.
import { trustOwn } from "./trustOwn.ts";
import { unpackText } from "./unpack.ts";

const scope = globalThis as unknown as {
  document?: unknown;
  benchdayUnpack?: typeof unpackText;
  onmessage: ((event: { readonly data: string }) => void) | null;
  importScripts(address: string): void;
};

if (scope.document !== undefined) scope.benchdayUnpack = unpackText;
else
  scope.onmessage = async ({ data }) => {
    scope.onmessage = null;
    try {
      const code = await unpackText(data);
      const address = URL.createObjectURL(new Blob([code], { type: "text/javascript" }));
      trustOwn();
      scope.importScripts(address);
      URL.revokeObjectURL(address);
    } catch (fault) {
      // Thrown outside the promise it reaches the page as an error of the worker.
      setTimeout(() => {
        throw fault;
      });
    }
  };
