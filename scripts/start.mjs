// npm start: builds, then shows the main job on the demo class: plan, trays, order, and where its printed papers lie.
//
// Until the page stands this is text. The demo's day is fixed, so that everybody sees the same answers.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { isThere } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const run = (...args) => {
  const done = spawnSync(process.execPath, args, { cwd: root, stdio: "inherit" });
  if (done.status !== 0) process.exit(done.status ?? 1);
};
const benchday = (...words) => {
  console.log(`\n$ npx benchday ${words.join(" ")}\n`);
  run(`${root}dist/cli.mjs`, ...words);
};

run(`${root}node_modules/vite/bin/vite.js`, "build", "--logLevel", "warn");
const day = ["--today", "2026-12-01"];
benchday("plan", "demo/harbour.json", "--trays", ...day);
benchday("order", "demo/harbour.json", ...day);
benchday("print", "demo/harbour.json", "all", "--out", "papers", ...(isThere("chromium") ? ["--pdf"] : []), ...day);
