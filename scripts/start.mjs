// npm start: builds what is not built, shows the main job on the demo class, and opens the page.
//
// First and last stands the page's address, so that it can be opened by hand where there is no browser or no display. The text
// answers are those of the commands, on the demo's fixed day, so that everybody sees the same. Nothing is waited for: a browser
// that was started goes its own way, and the shell is free again.
import { spawn, spawnSync } from "node:child_process";
import { existsSync, readdirSync, statSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { buildAll } from "./build.mjs";
import { isThere } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const page = `${root}dist/benchday.html`;
const address = `${pathToFileURL(page).href}#/demo`;

/** When the newest of what the build reads was written. */
function newest(path) {
  const stat = statSync(path);
  if (!stat.isDirectory()) return stat.mtimeMs;
  return readdirSync(path).reduce((time, name) => Math.max(time, newest(`${path}/${name}`)), 0);
}
const sources = [
  "src",
  "lessons",
  "kits",
  "demo",
  "locales",
  "scripts",
  "package-lock.json",
  "vite.config.ts",
  "vite.page.config.ts",
].map((p) => root + p);
const built = ["dist/cli.mjs", "dist/benchday.html"].map((p) => root + p);
const isFresh = built.every(existsSync) && Math.min(...built.map(newest)) > Math.max(...sources.map(newest));
if (!isFresh && !buildAll()) process.exit(1);

/** How this system opens a page in the browser of its owner; null where there is no display or nobody who looks at one. */
function opener() {
  if (process.env.CI || process.argv.includes("--no-open")) return null;
  if (process.platform === "darwin") return ["open", [address]];
  if (process.platform === "win32") return ["rundll32", ["url.dll,FileProtocolHandler", address]];
  const hasDisplay = Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
  return hasDisplay && isThere("xdg-open") ? ["xdg-open", [address]] : null;
}

console.log(`The page: ${address}`);
const open = opener();
if (open) {
  const browser = spawn(open[0], open[1], { detached: true, stdio: "ignore" });
  browser.on("error", () => {});
  browser.unref();
}

const benchday = (...words) => {
  console.log(`\n$ npx benchday ${words.join(" ")}\n`);
  const done = spawnSync(process.execPath, [`${root}dist/cli.mjs`, ...words], { cwd: root, stdio: "inherit" });
  if (done.status !== 0) process.exit(done.status ?? 1);
};
const day = ["--today", "2026-12-01"];
benchday("plan", "demo/harbour.json", "--trays", ...day);
benchday("order", "demo/harbour.json", ...day);
benchday("print", "demo/harbour.json", "all", "--out", "papers", ...(isThere("chromium") ? ["--pdf"] : []), ...day);

console.log(`\n${open ? "The page opens in your browser. If it does not, open" : "Open in a browser:"} ${address}`);
