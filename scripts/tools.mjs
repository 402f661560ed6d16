// The outside tools that the reference tests compare with, and how to get them on a Debian-like machine.
//
// As root on such a machine missing ones are installed; elsewhere they are named and their tests skipped by name.
// With REQUIRE_TOOLS=1 (CI sets it) a missing tool is a failure.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { delimiter } from "node:path";

/** Command looked for, Debian packages that bring it, file looked for where there is no command. */
export const tools = [
  { command: "ngspice", packages: ["ngspice"], for: "circuits" },
  { command: "avr-g++", packages: ["gcc-avr", "binutils-avr", "avr-libc"], for: "programs" },
  { command: "simavr", packages: ["simavr", "libsimavr-dev"], for: "programs" },
  { command: "gcc", packages: ["gcc", "libc6-dev"], for: "programs" },
  { command: "glpsol", packages: ["glpk-utils"], for: "orders" },
  { command: "cbc", packages: ["coinor-cbc"], for: "orders" },
  { command: "chromium", packages: ["chromium"], for: "papers" },
  { command: "pdftoppm", packages: ["poppler-utils"], for: "papers" },
  { command: "zbarimg", packages: ["zbar-tools"], for: "codes on labels" },
];

export const isThere = (command) =>
  (process.env.PATH ?? "")
    .split(delimiter)
    .some((folder) => folder && (existsSync(`${folder}/${command}`) || existsSync(`${folder}/${command}.exe`)));

/** Installs what is missing if this machine lets us. @returns the tools that are still missing. */
export function ensureTools({ install = true } = {}) {
  const missing = tools.filter((t) => !isThere(t.command));
  if (missing.length > 0 && install && process.getuid?.() === 0 && isThere("apt-get")) {
    const packages = [...new Set(missing.flatMap((t) => t.packages))];
    console.error(`Installing reference tools: ${packages.join(" ")} …`);
    const apt = (...args) =>
      spawnSync("apt-get", ["-o", "DPkg::Lock::Timeout=300", "-qq", ...args], {
        stdio: ["ignore", "ignore", "inherit"],
        env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
      });
    apt("update");
    apt("install", "-y", "--no-install-recommends", ...packages);
  }
  return tools.filter((t) => !isThere(t.command));
}
