// A browser for the tests of papers: prints pages, takes pictures and answers questions about a layout.
//
// Found by CHROMIUM or by its usual names on PATH. Flags are fixed and fonts are embedded, so that the same page gives the same
// picture; a new profile each time, nothing fetched. Where there is none, tests are skipped by name, unless REQUIRE_TOOLS is set.
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

const flags = [
  "--headless",
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--font-render-hinting=none",
  "--force-color-profile=srgb",
  "--hide-scrollbars",
  "--force-device-scale-factor=1",
];

function found(name: string, option: string): boolean {
  return spawnSync(name, [option], { stdio: "ignore" }).status === 0;
}

/** The browser's command, or null. */
export const chromium =
  [process.env.CHROMIUM, "chromium", "chromium-browser"].find(
    (name) => name !== undefined && name !== "" && found(name, "--version"),
  ) ?? null;

/** Whether the tools that read a PDF are there (poppler). */
export const hasPoppler = found("pdftoppm", "-v") && found("pdfinfo", "-v") && found("pdftotext", "-v");

/** Runs something with a folder of its own that is gone afterwards. */
export function inFolder<T>(run: (folder: string) => T): T {
  const folder = mkdtempSync(join(tmpdir(), "papers-"));
  try {
    return run(folder);
  } finally {
    rmSync(folder, { recursive: true, force: true, maxRetries: 5 });
  }
}

function browse(folder: string, page: string, ...more: string[]): string {
  writeFileSync(join(folder, "page.html"), page);
  return execFileSync(
    chromium ?? "chromium",
    [...flags, `--user-data-dir=${join(folder, "profile")}`, ...more, `file://${join(folder, "page.html")}`],
    {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "ignore"],
      timeout: 110_000,
      maxBuffer: 1 << 28,
    },
  );
}

/** Prints a page as PDF into the folder and returns the file's path. */
export function printPdf(folder: string, page: string, name: string): string {
  const file = join(folder, `${name}.pdf`);
  browse(folder, page, "--no-pdf-header-footer", `--print-to-pdf=${file}`);
  return file;
}

/** A picture of the page as the screen shows it, as PNG. */
export function screenshot(folder: string, page: string, width: number, height: number): Buffer {
  const file = join(folder, "picture.png");
  browse(folder, page, `--screenshot=${file}`, `--window-size=${width},${height}`);
  return readFileSync(file);
}

/** Runs a script in the page and returns what it gives, as JSON. The page's own policy is lifted for it. */
export function ask<T>(folder: string, page: string, script: string): T {
  const open = page.replace(/<meta http-equiv="Content-Security-Policy"[^>]*>/, "");
  const out = browse(
    folder,
    `${open}<script>document.fonts.ready.then(() => { const answer = JSON.stringify((() => { ${script} })()); document.body.textContent = "ANSWER" + answer + "END"; });</script>`,
    "--dump-dom",
    "--virtual-time-budget=4000",
  );
  const answer = /ANSWER(.*)END/s.exec(out)?.[1] ?? "null";
  return JSON.parse(
    answer
      .replace(/&lt;/g, "<")
      .replace(/&gt;/g, ">")
      .replace(/&nbsp;/g, "\u00a0")
      .replace(/&amp;/g, "&"),
  ) as T;
}

/** Some pages of a PDF as grey pictures at so many dots an inch: width, height, and one byte a dot. */
export function greyPages(
  folder: string,
  pdf: string,
  dpi: number,
  first: number,
  last: number,
): { width: number; height: number; dots: Buffer }[] {
  execFileSync("pdftoppm", ["-gray", "-r", String(dpi), "-f", String(first), "-l", String(last), pdf, join(folder, "grey")]);
  const names = execFileSync("ls", [folder], { encoding: "utf8" })
    .split("\n")
    .filter((n) => /^grey-\d+\.pgm$/.test(n));
  return names.map((name) => {
    const data = readFileSync(join(folder, name));
    rmSync(join(folder, name));
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(data.toString("latin1", 0, 40))!;
    return { width: Number(head[1]), height: Number(head[2]), dots: data.subarray(head[0].length) };
  });
}

export function pageCount(pdf: string): number {
  return Number(/Pages:\s+(\d+)/.exec(execFileSync("pdfinfo", [pdf], { encoding: "utf8" }))?.[1]);
}
