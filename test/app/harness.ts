// The built page in a real browser, for tests of screens: dist/benchday.html from the disk, network off, a fresh profile.
//
// Where no browser is found a test is skipped by name; with REQUIRE_TOOLS set it fails instead.
// Does not know: what is tested.
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type BrowserContext, chromium, type Page } from "playwright-core";
import { test } from "vitest";
import { browser, builtFile, flags } from "./enginePage.ts";

export interface OpenOptions {
  readonly width?: number;
  readonly height?: number;
  /** "#/course"; the first screen where left out. */
  readonly hash?: string;
  /** "xl", "xr": one of the languages that are made. */
  readonly language?: string;
  /** A folder that outlives the page, for tests that close and open again. */
  readonly profile?: string;
  /** A clock set by hand, ISO 8601 without zone. */
  readonly now?: string;
  /** Another file that is opened in its place, such as one that frames the page; nothing of it is waited for. */
  readonly file?: string;
}

export interface OpenedPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Errors that nobody caught, and what was asked for beyond the file. */
  readonly faults: readonly string[];
  readonly close: () => Promise<void>;
}

/** A test that needs a browser. */
export const browserTest = browser !== null || process.env.REQUIRE_TOOLS ? test : test.skip;

export async function openPage(options: OpenOptions = {}): Promise<OpenedPage> {
  const { width = 1280, height = 844, hash = "", language, now } = options;
  if (browser === null) throw new Error("no browser: set CHROMIUM or put chromium on the PATH");
  const profile = options.profile ?? mkdtempSync(join(tmpdir(), "benchday-page-"));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: browser,
    args: [...flags, "--font-render-hinting=none", "--force-color-profile=srgb"],
    offline: true,
    viewport: { width, height },
    acceptDownloads: true,
  });
  const page = context.pages()[0] ?? (await context.newPage());
  const faults: string[] = [];
  page.on("pageerror", (fault) => faults.push(String(fault)));
  page.on("request", (request) => {
    if (!/^(?:file|blob|data|about):/.test(request.url())) faults.push(`asks for ${request.url()}`);
  });
  if (now) await page.clock.install({ time: now });
  if (options.file) await page.goto(pathToFileURL(options.file).href);
  else {
    await page.goto(`${pathToFileURL(builtFile).href}${language ? `?language=${language}` : ""}${hash}`);
    await page.locator("footer.block, .wall").first().waitFor();
    await placed(page);
  }
  return {
    page,
    context,
    faults,
    async close() {
      await context.close();
      if (!options.profile) rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
    },
  };
}

/** The page with the invented class open and its plan worked out, at Today. */
export async function withDemo(options: OpenOptions = {}): Promise<OpenedPage> {
  const opened = await openPage({ ...options, hash: "#/demo" });
  await planned(opened.page);
  if (options.hash) await goTo(opened.page, options.hash);
  return opened;
}

/** Waits until the place itself stands there: its code comes a moment after the first screen. */
export async function placed(page: Page): Promise<void> {
  await page.locator("main.coming").waitFor({ state: "detached" });
}

/** Waits until the plan belongs to the class as it is. */
export async function planned(page: Page): Promise<void> {
  await page.locator("html[data-plan=fresh]").waitFor({ timeout: 45_000 });
}

/** Goes to an address and waits for the place behind it. */
export async function goTo(page: Page, hash: string): Promise<void> {
  const isThere = await page.evaluate((to) => {
    if (location.hash === to) return true;
    location.hash = to;
    return false;
  }, hash);
  if (isThere) return;
  await page.waitForFunction(
    (to) => location.hash === to && document.activeElement?.tagName === "H1" && !document.querySelector("main.coming"),
    hash,
  );
}

const axeSource = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

/** What axe-core finds on the page as it stands: one line a fault. The policy of the page forbids script tags, so it is evaluated. */
export async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axeSource);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: {
        run(): Promise<{ violations: { id: string; help: string; nodes: { target: unknown[]; failureSummary: string }[] }[] }>;
      };
    };
    const { violations } = await axe.run();
    return violations.flatMap(({ id, help, nodes }) => nodes.map((n) => `${id}: ${help}: ${n.target.join(" ")}`));
  });
}
