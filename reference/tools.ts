// What the reference tests share: is a real tool here, which one, and has an input or output changed since it was recorded.
//
// Does not know: what any tool computes.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync } from "node:fs";
import { delimiter } from "node:path";

/** The day that recordings carry. */
export const recordingDate = "2026-11-25";

/** Whether a command is on the PATH. */
export function hasTool(name: string): boolean {
  return (process.env.PATH ?? "").split(delimiter).some((folder) => folder !== "" && existsSync(`${folder}/${name}`));
}

/** @returns the first line with a number that `name --version` prints, without decoration. */
export function toolVersion(name: string, flag = "--version"): string {
  const { stdout, stderr } = spawnSync(name, [flag], { encoding: "utf8" });
  const line = `${stdout}\n${stderr}`.split("\n").find((text) => /\d/.test(text)) ?? "";
  return line.replace(/^[*\s]+/, "").trim();
}

/** SHA-256 in hexadecimal. */
export function sha256(text: string | Uint8Array): string {
  return createHash("sha256").update(text).digest("hex");
}
