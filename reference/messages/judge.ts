// What avr-g++ says first of a program, with the board's header above and prototypes of the program's functions.
//
// As in class: #line keeps the lines of the program, a prototype carries the line of its function. A program that compiles is
// linked too, because a missing loop shows only there. Warnings are those that the compiler gives unasked.
// Does not know: our own reader.
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { promisedFunctions } from "../../src/bench/program/explain/promisedFunctions.ts";
import { readTokens } from "../../src/bench/program/read/readTokens.ts";

export const flags = "-std=gnu++11 -Os -mmcu=atmega328p -DF_CPU=16000000UL -ffunction-sections -fdata-sections -fno-exceptions";
/** As it stands in the recordings. */
export const command = `LC_ALL=C avr-g++ ${flags} -fsyntax-only -Ireference/programs/core program.cpp`;

/** A message of the compiler; for one about the board's header, the line of the program that brought it there. */
export interface Message {
  readonly line: number;
  readonly column: number;
  readonly severity: "error" | "warning";
  readonly message: string;
  /** It stands in the board's header, where a name of the program is replaced by what it stands for. */
  readonly inHeader?: true;
}

export interface Judge {
  /** @returns its first error, without one its first warning, else null. */
  first(text: string): Message | null;
  close(): void;
}

/** @param core folder of the board's header. */
export function openJudge(core: string): Judge {
  const made = mkdtempSync(join(tmpdir(), "judge-"));
  const file = `${made}/program.cpp`;
  const env = { ...process.env, LC_ALL: "C" };
  return {
    first: (text) => {
      writeFileSync(file, judgedText(text));
      const { stderr } = spawnSync("avr-g++", [...flags.split(" "), "-fsyntax-only", `-I${core}`, file], {
        encoding: "utf8",
        env,
      });
      const found = readMessages(stderr);
      return found.find((m) => m.severity === "error") ?? linked(text) ?? found[0] ?? null;
    },
    close: () => rmSync(made, { recursive: true, force: true }),
  };

  /** What shows only when everything is put together: templates of the board's header, and what its main calls. */
  function linked(text: string): Message | null {
    const object = `${made}/program.o`;
    const args = [...flags.split(" "), "-w", "-c", `-I${core}`, file, "-o", object];
    const compiled = spawnSync("avr-g++", args, { encoding: "utf8", env });
    if (compiled.status !== 0) return readMessages(compiled.stderr).find((m) => m.severity === "error") ?? null;
    if (/\bvoid\s+setup\s*\(/.test(text) && /\bvoid\s+loop\s*\(/.test(text)) return null;
    const { stdout } = spawnSync("avr-nm", [object], { encoding: "utf8", env });
    const missing = ["setup", "loop"].find((name) => !stdout.includes(` T _Z${name.length}${name}v`));
    if (missing === undefined) return null;
    return { line: 0, column: 0, severity: "error", message: `undefined reference to \`${missing}'` };
  }
}

/** The program as the compiler gets it. */
export function judgedText(text: string): string {
  const lines = text.split("\n");
  const { tokens } = readTokens("", text);
  const { list, before } = promisedFunctions(tokens);
  const first = tokens[before]!.line;
  const prototypes = list.flatMap((p) => {
    const from = tokens[p.from]!;
    const last = tokens[p.to - 1]!;
    const rows = lines.slice(from.line - 1, last.endLine);
    rows[rows.length - 1] = `${rows.at(-1)!.slice(0, last.endColumn - 1)};`;
    rows[0] = " ".repeat(from.column - 1) + rows[0]!.slice(from.column - 1);
    return [`#line ${from.line}`, ...rows];
  });
  return [
    '#include "board.h"',
    "#line 1",
    ...lines.slice(0, first - 1),
    ...prototypes,
    `#line ${first}`,
    ...lines.slice(first - 1),
  ].join("\n");
}

function readMessages(stderr: string): Message[] {
  const rows = stderr.split("\n");
  const messages: Message[] = [];
  for (const [i, row] of rows.entries()) {
    const m = /^(\S+?):(\d+):(\d+): (?:fatal )?(error|warning): (.*)$/.exec(row);
    if (m === null) continue;
    const message = { line: Number(m[2]), column: Number(m[3]), severity: m[4] as Message["severity"], message: m[5]! };
    if (m[1]!.endsWith("program.cpp")) {
      messages.push(message);
      continue;
    }
    // The place in the program: "note: in expansion of macro" behind it, or "required from here" before it.
    const use =
      rows.slice(Math.max(0, i - 3), i).find((r) => /program\.cpp:\d+:\d+: {3}required from here/.test(r)) ??
      rows.slice(i + 1).find((r) => /program\.cpp:\d+:\d+: note: in expansion of macro/.test(r));
    const at = use && /program\.cpp:(\d+):(\d+):/.exec(use);
    messages.push(
      at ? { ...message, line: Number(at[1]), column: Number(at[2]), inHeader: true } : { ...message, line: 0, inHeader: true },
    );
  }
  return messages;
}
