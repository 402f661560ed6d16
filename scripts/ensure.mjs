// Installs what is missing before anything else runs: the packages of package-lock.json, once per lock file and Node version.
//
// Plain Node, because nothing is installed yet when it starts. Quiet when there is nothing to do.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const root = fileURLToPath(new URL("..", import.meta.url));
const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
if (major < 20 || (major === 20 && minor < 19)) {
  console.error(
    `Benchday needs Node 20.19 or newer. This is Node ${process.versions.node}. Install a newer one and run the command again.`,
  );
  process.exit(1);
}

const stamp = `${root}node_modules/.benchday-ensured`;
const wanted = createHash("sha256")
  .update(readFileSync(`${root}package.json`))
  .update(readFileSync(`${root}package-lock.json`))
  .update(String(major))
  .digest("hex");
if (!existsSync(stamp) || readFileSync(stamp, "utf8") !== wanted) {
  console.error("Installing the packages that Benchday is built with …");
  const npm = process.env.npm_execpath;
  // No scripts of packages are run: everything we use works without them.
  const args = ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--loglevel=error"];
  const done = npm
    ? spawnSync(process.execPath, [npm, ...args], { cwd: root, stdio: ["ignore", "ignore", "inherit"] })
    : spawnSync("npm", args, { cwd: root, stdio: ["ignore", "ignore", "inherit"], shell: process.platform === "win32" });
  if (done.status !== 0) {
    console.error("The packages could not be installed. This one step needs a network; connect once and run the command again.");
    process.exit(1);
  }
  writeFileSync(stamp, wanted);
}
