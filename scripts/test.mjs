// npm test: lint, types, build, then every test; npm run test:long: the same with large numbers, its last result kept.
//
// The closing line "N passed, N failed" is written by test/countLine.ts and nothing prints after it; a lint, type or build
// fault is counted there as one failed, so that the line never tells a better story than the exit status.
import { spawnSync } from "node:child_process";
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { buildAll } from "./build.mjs";
import { ensureTools } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const long = process.argv.includes("--long");
const filters = process.argv.slice(2).filter((a) => !a.startsWith("--"));

const missing = ensureTools({ install: !process.argv.includes("--no-install") });
if (missing.length > 0) {
  console.error("Reference tools that are not here, so that their results are compared only with the recordings:");
  for (const tool of missing) console.error(`  ${tool.command} (${tool.for}); Debian package ${tool.packages.join(" ")}`);
}
if (missing.length > 0 && (process.env.CI === "true" || process.env.REQUIRE_TOOLS)) {
  console.error("\n0 passed, 1 failed");
  process.exit(1);
}

const node = (script, ...args) =>
  spawnSync(process.execPath, [`${root}node_modules/${script}`, ...args], { cwd: root, stdio: "inherit" }).status === 0;
const steps = [
  ["lint", () => node("@biomejs/biome/bin/biome", "check", "--error-on-warnings", ".")],
  ["types", () => node("typescript/bin/tsc")],
  ["types of the page", () => node("typescript/bin/tsc", "-p", "tsconfig.app.json")],
  ["build", () => buildAll()],
];
const broken = [];
for (const [name, run] of filters.length > 0 ? [] : steps) {
  if (run()) continue;
  console.error(`${name}: failed`);
  broken.push(name);
}

const env = {
  ...process.env,
  LONG: long ? "1" : "",
  FAULTS_BEFORE: broken.join(";"),
  ...(process.env.CI === "true" ? { REQUIRE_TOOLS: "1" } : {}),
};
const started = Date.now();
const run = spawnSync(process.execPath, [`${root}node_modules/vitest/vitest.mjs`, "run", ...filters], {
  cwd: root,
  env,
  stdio: long ? ["ignore", "pipe", "inherit"] : "inherit",
  encoding: "utf8",
  maxBuffer: 1 << 28,
});
if (long) {
  process.stdout.write(run.stdout);
  const closing = run.stdout.trim().split("\n").at(-1);
  const commit = spawnSync("git", ["rev-parse", "--short", "HEAD"], { cwd: root, encoding: "utf8" }).stdout.trim();
  const day = new Date().toISOString().slice(0, 10);
  writeFileSync(
    `${root}test/long-result.md`,
    `# The last long run\n\n\`npm run test:long\` on ${day}, on top of commit ${commit}, Node ${process.versions.node}, ${Math.round((Date.now() - started) / 1000)} s:\n\n    ${closing}\n`,
  );
}
process.exit(run.status === 0 && broken.length === 0 ? 0 : 1);
