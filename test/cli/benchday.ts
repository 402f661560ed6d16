// Runs the built command as a person would, in a process of its own.
import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

export const root = new URL("../..", import.meta.url).pathname;
const cli = join(root, "dist/cli.mjs");

export interface Ran {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** `npm test` builds before it tests; a test that runs alone builds once. */
function build(): void {
  spawnSync(process.execPath, [join(root, "node_modules/vite/bin/vite.js"), "build", "--logLevel", "error"], { cwd: root });
}

export function benchday(words: readonly string[], options: { readonly cwd?: string } = {}): Ran {
  if (!existsSync(cli)) build();
  const done = spawnSync(process.execPath, [cli, ...words], {
    cwd: options.cwd ?? root,
    encoding: "utf8",
    env: { ...process.env, NO_COLOR: "1" },
    maxBuffer: 1 << 28,
    timeout: 120_000,
  });
  return { status: done.status, out: done.stdout, err: done.stderr };
}

/** The JSON document that a command answers with. */
export function answerOf<Answer>(words: readonly string[], options: { readonly cwd?: string } = {}): Answer {
  const ran = benchday([...words, "--json"], options);
  try {
    return JSON.parse(ran.out) as Answer;
  } catch {
    throw new Error(
      `benchday ${words.join(" ")} --json answered no JSON document: ${ran.out.slice(0, 300)} ${ran.err.slice(0, 300)}`,
    );
  }
}

export const freshFolder = (): string => mkdtempSync(join(tmpdir(), "benchday-test-"));
