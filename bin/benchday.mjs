#!/usr/bin/env node
// Starts the built command; builds it first if that was not done yet.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
if (!existsSync(`${root}dist/cli.mjs`)) {
  for (const script of ["scripts/ensure.mjs", "node_modules/vite/bin/vite.js"]) {
    const args = script.endsWith("vite.js") ? ["build", "--logLevel", "warn"] : [];
    const done = spawnSync(process.execPath, [root + script, ...args], { cwd: root, stdio: ["ignore", "ignore", "inherit"] });
    if (done.status !== 0) process.exit(1);
  }
}
await import("../dist/cli.mjs");
