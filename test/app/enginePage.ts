// The engine alone in a real browser: the shipped file's own blocks and policy, with the test script in place of the screens.
//
// Does not know: screens.
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";
import { type BrowserContext, chromium, type Frame, type Page } from "playwright-core";
import { build, type Rollup } from "vite";
import { pageTarget, policy, root } from "../../scripts/oneFile.ts";

export const builtFile = `${root}dist/benchday.html`;

/** The browser's program, or null. */
export const browser =
  [
    process.env.CHROMIUM,
    ...(process.env.PATH ?? "").split(delimiter).flatMap((p) => [join(p, "chromium"), join(p, "chromium-browser")]),
  ].find((p) => p !== undefined && p !== "" && existsSync(p)) ?? null;

export const flags = [
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
];

/** The shipped file, taken apart. */
export function readBuilt(html = readFileSync(builtFile, "utf8")) {
  const scripts = [...html.matchAll(/<script(?<what>[^>]*)>(?<text>[\s\S]*?)<\/script>/g)].map((m) => ({
    what: m.groups?.what?.trim() ?? "",
    text: m.groups?.text ?? "",
    at: m.index,
  }));
  return {
    html,
    /** Those that the browser runs. */
    running: scripts.filter((s) => !s.what.includes("text/plain")),
    block: (name: string) => scripts.find((s) => s.what.includes(`id="benchday-${name}"`))?.text ?? "",
    policy: /http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(html)?.[1] ?? "",
  };
}

export const hashOf = (script: string) => `'sha256-${createHash("sha256").update(script).digest("base64")}'`;

export interface EnginePage {
  readonly page: Page;
  /** Addresses asked for beyond the file itself and what it made in memory. */
  readonly outside: readonly string[];
  readonly faults: readonly string[];
  close(): Promise<void>;
}

/** Makes the page of the engine alone and opens it, with the network off. */
export async function makeEnginePages() {
  const folder = mkdtempSync(join(tmpdir(), "benchday-engine-"));
  const built = (await build({
    configFile: false,
    root,
    logLevel: "error",
    build: {
      write: false,
      target: pageTarget,
      modulePreload: false,
      rolldownOptions: { input: `${root}test/app/engineAlone.ts`, output: { format: "iife", codeSplitting: false } },
    },
  })) as Rollup.RollupOutput;
  const script = built.output[0].code.trim();
  const shipped = readBuilt();
  const [own] = shipped.running;
  const html = shipped.html.replace(own?.text ?? "no script", () => script).replace(shipped.policy, () => policy(script));
  const file = join(folder, "engine.html");
  writeFileSync(file, html);
  const boxed = join(folder, "boxed.html");
  writeFileSync(boxed, `<!doctype html><iframe sandbox="allow-scripts" src="engine.html"></iframe>`);
  const contexts: BrowserContext[] = [];

  async function open(how: { boxed?: boolean; before?: () => void } = {}): Promise<EnginePage & { frame: Frame }> {
    const profile = mkdtempSync(join(folder, "profile-"));
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: browser ?? "",
      args: flags,
      offline: true,
      viewport: { width: 390, height: 844 },
    });
    contexts.push(context);
    const page = context.pages()[0] ?? (await context.newPage());
    const outside: string[] = [];
    const faults: string[] = [];
    page.on("request", (request) => {
      if (!/^(?:file|blob|data):/.test(request.url())) outside.push(request.url());
    });
    page.on("pageerror", (fault) => faults.push(fault.message));
    if (how.before) await page.addInitScript(how.before);
    await page.goto(pathToFileURL(how.boxed ? boxed : file).href);
    const frame = how.boxed ? (page.frames().find((f) => f.url().endsWith("engine.html")) ?? page.mainFrame()) : page.mainFrame();
    await frame.waitForFunction(() => "engine" in globalThis);
    return { page, frame, outside, faults, close: () => context.close() };
  }
  return {
    open,
    /** A folder that goes when the pages go. */
    folder: (name: string) => join(folder, name),
    async close(): Promise<void> {
      await Promise.all(contexts.map((c) => c.close()));
      rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}
