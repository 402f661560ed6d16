// Where the engine runs: a worker from the packed code, or the page itself where the browser gives no worker.
//
// A sandboxed frame, an old phone or a policy may refuse the worker, at once or only when it starts. The page then runs the
// same code. Scripts are made from the file's own blocks only; the page's policy lets nothing else in.
// Does not know: questions and answers.
import { EngineBroken } from "./engine.ts";
import { type BlockName, packedBlock } from "./packedBlocks.ts";
import type { FromEngine, ToEngine } from "./wire.ts";

export interface Host {
  readonly where: "worker" | "page";
  send(message: ToEngine): void;
  /** Ends it; nothing is heard from it any more. */
  end(): void;
}

export interface HostEars {
  hear(message: FromEngine): void;
  /** The worker failed and says no more. */
  lost(detail: string): void;
}

/** What the scripts of the blocks leave in the page. */
interface InPage {
  benchdayUnpack?: (packed: string) => Promise<string>;
  benchdayEngine?: (tell: (message: FromEngine) => void) => (message: ToEngine) => void;
}
const scope = globalThis as unknown as InPage;

/** @throws EngineBroken "missing" where the file lacks a block, "broken" where neither way works. */
export async function openHost(ears: HostEars): Promise<Host> {
  const [loader, engine] = await Promise.all([need("loader"), need("engine")]);
  try {
    return await openWorker(loader, engine, ears);
  } catch {
    return await openInPage(loader, engine, ears);
  }
}

async function need(name: BlockName): Promise<string> {
  const text = await packedBlock(name);
  if (text === null || text === "") throw new EngineBroken("missing", name);
  return text;
}

function openWorker(loader: string, engine: string, ears: HostEars): Promise<Host> {
  return new Promise((resolve, reject) => {
    const address = addressOf(loader);
    const worker = new Worker(address);
    let isOpen = false;
    const end = () => {
      worker.onmessage = null;
      worker.onerror = null;
      worker.terminate();
    };
    worker.onerror = (event) => {
      event.preventDefault?.();
      end();
      if (isOpen) ears.lost(event.message ?? "");
      else reject(new Error(event.message));
    };
    worker.onmessage = ({ data }: MessageEvent<FromEngine>) => {
      if (isOpen) return ears.hear(data);
      isOpen = true;
      URL.revokeObjectURL(address);
      resolve({ where: "worker", send: (message) => worker.postMessage(message), end });
    };
    worker.postMessage(engine);
  });
}

async function openInPage(loader: string, engine: string, ears: HostEars): Promise<Host> {
  if (scope.benchdayEngine === undefined) {
    await runScript(loader);
    if (scope.benchdayUnpack === undefined) throw new EngineBroken("broken", "the loader did not run");
    await runScript(await scope.benchdayUnpack(engine));
  }
  if (scope.benchdayEngine === undefined) throw new EngineBroken("broken", "the engine did not run");
  let isOver = false;
  // Messages are handed over in a later turn and as copies, as a worker's are: neither side can change what the other holds.
  const later = <Message>(take: (message: Message) => void) => {
    return (message: Message) => {
      const copy = structuredClone(message);
      setTimeout(() => {
        if (!isOver) take(copy);
      });
    };
  };
  const take = scope.benchdayEngine(later(ears.hear));
  return {
    where: "page",
    send: later(take),
    end: () => {
      isOver = true;
    },
  };
}

/** Runs a script from memory, in the page itself. */
export function runScript(text: string): Promise<void> {
  return new Promise((resolve, reject) => {
    const script = document.createElement("script");
    const address = addressOf(text);
    script.onload = () => {
      URL.revokeObjectURL(address);
      resolve();
    };
    script.onerror = () => reject(new EngineBroken("broken", "a script was refused"));
    script.src = address;
    document.head.append(script);
  });
}

const addressOf = (text: string) => URL.createObjectURL(new Blob([text], { type: "text/javascript" }));
