// Killed in the middle of writing, a command leaves the old file or the new one, whole, and the next write leaves no litter.
//
// A child process writes two contents in turn, over and over, and is killed at a moment that a seed draws. This shows what
// the death of a process does; that a power cut does no worse rests on the flush and the rename.
import { spawn } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { importTypeScript } from "../../scripts/bundle.mjs";
import { seededRandom } from "../../src/base/index.ts";
import { writeSafely } from "../../src/cli/files.ts";
import { sample } from "../sample.ts";

const folder = mkdtempSync(join(tmpdir(), "benchday-kill-"));
const target = join(folder, "class.json");
const contents = ["a", "b"].map((c) => c.repeat(300_000));
let script = "";

beforeAll(async () => {
  await importTypeScript("src/cli/files.ts");
  script = join(folder, "writer.mjs");
  const bundled = new URL("../../.cache/bundled/src-cli-files/src-cli-files.mjs", import.meta.url).href;
  writeFileSync(
    script,
    `import { writeSafely } from ${JSON.stringify(bundled)};
process.stdout.write("started\\n");
for (let i = 0; ; i += 1) if (writeSafely(process.argv[2], (i % 2 ? "a" : "b").repeat(300000))) process.exit(3);`,
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test("a killed writer never leaves half a file", { timeout: 1_800_000 }, async () => {
  const random = seededRandom(7, "kills");
  expect(writeSafely(target, contents[0]!)).toBeNull();
  for (let kill = 0; kill < sample(25, 1000); kill += 1) {
    await new Promise<void>((resolve) => {
      const child = spawn(process.execPath, [script, target], { stdio: ["ignore", "pipe", "inherit"] });
      child.stdout.once("data", () => setTimeout(() => child.kill("SIGKILL"), random.int(0, 40)));
      child.once("exit", () => resolve());
    });
    expect(contents).toContain(readFileSync(target, "utf8"));
  }
  expect(writeSafely(target, contents[1]!)).toBeNull();
  expect(readFileSync(target, "utf8")).toBe(contents[1]);
  expect(readdirSync(folder).filter((n) => n.includes(".new-"))).toEqual([]);
});

test("a folder that cannot be written to is told, and what was there stays", () => {
  expect(writeSafely(target, "kept")).toBeNull();
  expect(writeSafely(join(target, "below-a-file.json"), "x")).toMatchObject({ code: "cli.notWritable" });
  expect(readFileSync(target, "utf8")).toBe("kept");
});
