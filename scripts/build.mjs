// npm run build: the commands as dist/cli.mjs, then the page as dist/benchday.html.
//
// The first build empties the folder, so the order matters.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));

/** @returns whether both were built; what was wrong stands on standard error. */
export function buildAll() {
  return [[], ["--config", "vite.page.config.ts"]].every(
    (which) =>
      spawnSync(process.execPath, [`${root}node_modules/vite/bin/vite.js`, "build", "--logLevel", "warn", ...which], {
        cwd: root,
        stdio: "inherit",
      }).status === 0,
  );
}

if (process.argv[1] === fileURLToPath(import.meta.url)) process.exit(buildAll() ? 0 : 1);
