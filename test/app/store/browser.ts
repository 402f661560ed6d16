// A real browser for the tests of the store: the page with the store in it, started on a profile, and killed by process id.
//
// Killing is SIGKILL to every process of that browser, found below the one that was started, so that nobody has time to say goodbye.
import { type ChildProcess, spawn } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, type BrowserContext, chromium, type Frame, type Page } from "playwright-core";
import { build } from "vite";
import { chromium as found } from "../../pictures/chromium.ts";
import type { Acts } from "./page.ts";

/** The browser's command with its folder, or null: playwright-core does not look along PATH. */
export const command =
  found === null || found.includes("/")
    ? found
    : ((process.env.PATH ?? "")
        .split(":")
        .map((folder) => join(folder, found as string))
        .find(existsSync) ?? null);
export const wait = (ms: number) => new Promise<void>((resolve) => setTimeout(resolve, ms));
export const newFolder = (name: string) => mkdtempSync(join(tmpdir(), `benchday-${name}-`));
export const drop = (folder: string) => rmSync(folder, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });

const flags = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--disable-extensions",
];

/** The page as one HTML text. */
export async function pageText(): Promise<string> {
  const built = await build({
    configFile: false,
    logLevel: "error",
    build: {
      write: false,
      minify: false,
      target: "es2022",
      lib: { entry: new URL("./page.ts", import.meta.url).pathname, formats: ["iife"], name: "page" },
    },
  });
  const outputs = (Array.isArray(built) ? built : [built]) as unknown as { output: { code?: string }[] }[];
  const code = outputs[0]?.output[0]?.code ?? "";
  return `<!doctype html><meta charset="utf-8"><title>store</title><script>${code.replaceAll("</script", "<\\/script")}</script>`;
}

/** Writes the page into a folder and returns its address. */
export async function pageFile(folder: string): Promise<string> {
  const file = join(folder, "page.html");
  writeFileSync(file, await pageText());
  return `file://${file}`;
}

/** Calls an act in the page. */
export function call<K extends keyof Acts>(
  page: Page | Frame,
  name: K,
  ...args: Parameters<Acts[K]>
): Promise<Awaited<ReturnType<Acts[K]>>> {
  return page.evaluate(
    ([act, given]) =>
      (globalThis as never as { acts: Record<string, (...a: unknown[]) => unknown> }).acts[act as string]!(...(given as [])),
    [name, args] as const,
  ) as never;
}

/** A browser on a profile, driven as a person would leave it: closed properly. */
export function launch(profile: string): Promise<BrowserContext> {
  return chromium.launchPersistentContext(profile, { executablePath: command ?? "", headless: true, args: flags });
}

export interface Killable {
  readonly page: Page;
  /** Kills every process of this browser at once. */
  kill(): void;
  /** Lets go of the connection after a kill. */
  release(): Promise<void>;
}

/** Starts a browser whose processes can be killed. */
export async function startKillable(profile: string): Promise<Killable> {
  const port = join(profile, "DevToolsActivePort");
  rmSync(port, { force: true });
  const child: ChildProcess = spawn(
    command ?? "",
    ["--headless", ...flags, "--remote-debugging-port=0", `--user-data-dir=${profile}`, "about:blank"],
    { stdio: "ignore" },
  );
  const kill = () => {
    for (const id of below(child.pid ?? -1)) {
      try {
        process.kill(id, "SIGKILL");
      } catch {
        // Gone already.
      }
    }
  };
  let browser: Browser;
  try {
    for (let i = 0; i < 600 && !/^\d+\n/.test(existsSync(port) ? readFileSync(port, "utf8") : ""); i++) await wait(25);
    browser = await chromium.connectOverCDP(`http://127.0.0.1:${readFileSync(port, "utf8").split("\n")[0]}`);
    const context = browser.contexts()[0]!;
    const page = context.pages()[0] ?? (await context.newPage());
    return { page, kill, release: () => browser.close().catch(() => {}) };
  } catch (error) {
    kill();
    throw error;
  }
}

/** A process and all below it. */
function below(root: number): number[] {
  if (root < 0) return [];
  const parents = new Map<number, number>();
  for (const name of readdirSync("/proc"))
    if (/^\d+$/.test(name)) {
      try {
        parents.set(Number(name), Number(readFileSync(`/proc/${name}/stat`, "utf8").replace(/.*\) /s, "").split(" ")[1]));
      } catch {
        // It ended meanwhile.
      }
    }
  const all = [root];
  for (const id of all) for (const [child, parent] of parents) if (parent === id) all.push(child);
  return all;
}
