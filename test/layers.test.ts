// The house keeps its plan: imports go only where the table in ARCHITECTURE.md lets them, rooms are entered by their door,
// the core is pure, and every file says what it is.
//
// The checker is itself tested with planted faults at the end, because a checker that finds nothing proves nothing.
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { dirname, join, normalize, relative } from "node:path";
import { expect, test } from "vitest";

const root = new URL("..", import.meta.url).pathname;

/** Room to the rooms that it may know, from the table in ARCHITECTURE.md. */
function readTable(markdown: string): Map<string, { knows: Set<string>; typesOnly: Set<string> }> {
  const table = new Map<string, { knows: Set<string>; typesOnly: Set<string> }>();
  for (const line of markdown.split("\n")) {
    const cells = /^\|\s*`([a-z/-]+)`\s*\|([^|]*)\|([^|]*)\|\s*$/.exec(line);
    if (!cells) continue;
    const names = (cell: string) => new Set([...cell.matchAll(/`([a-z/-]+)`/g)].map((m) => m[1] as string));
    table.set(cells[1] as string, { knows: names(cells[2] as string), typesOnly: names(cells[3] as string) });
  }
  return table;
}

function roomOf(path: string, rooms: Iterable<string>): string | null {
  for (const room of rooms) if (path.startsWith(`src/${room}/`)) return room;
  return null;
}

interface SourceFile {
  path: string;
  text: string;
}

/** All that is wrong with the imports, as "file: what". */
function findWrongImports(files: readonly SourceFile[], table: ReturnType<typeof readTable>): string[] {
  const wrong: string[] = [];
  for (const { path, text } of files) {
    const from = roomOf(path, table.keys());
    if (from === null) {
      wrong.push(`${path}: lies in no room of the table`);
      continue;
    }
    const isTest = /\.test\.ts$|\.fixture\.ts$/.test(path);
    const pattern = /^(?:import|export)\s+(type\s+)?(?:[^'"]*?\sfrom\s+)?["']([^"']+)["']|import\(\s*["']([^"']+)["']\s*\)/gms;
    for (const match of text.matchAll(pattern)) {
      const specifier = (match[2] ?? match[3]) as string;
      if (!specifier.startsWith(".")) {
        if (specifier.startsWith("node:") && from !== "cli" && !isTest)
          wrong.push(`${path}: imports ${specifier}, which only cli may`);
        continue;
      }
      const target = normalize(join(dirname(path), specifier));
      if (!target.startsWith("src/")) continue;
      const to = roomOf(target, table.keys());
      if (to === null) wrong.push(`${path}: imports ${target}, which lies in no room`);
      else if (to !== from && !isTest) {
        const rule = table.get(from);
        const typeOnly = match[1] !== undefined || (match[3] !== undefined && /:\s*import\(|<import\(/.test(text));
        if (!rule?.knows.has(to) && !(typeOnly && rule?.typesOnly.has(to))) wrong.push(`${path}: ${from} may not import ${to}`);
        if (!target.endsWith(`src/${to}/index.ts`) && !target.endsWith("/index.ts"))
          wrong.push(`${path}: enters ${to} past its index.ts`);
      }
    }
  }
  return wrong;
}

/** What only cli and app may touch: the clock, chance, the network, the page, code made from text. */
const impure = [
  /\bnew Date\b|\bDate\.(?:now|parse|UTC)\b/,
  /\bMath\.random\b/,
  /\b(?:globalThis|localStorage)\.|\bwindow\.(?:document|location|addEventListener|open)|(?<!["'\w.])document\.(?:body|head|createElement|querySelector|getElementById|cookie)/,
  /\bfetch\(/,
  /\bprocess\./,
  /\beval\(|\bnew Function\b/,
  /\bTemporal\.Now\b/,
  /\bperformance\.now\b/,
];

function findImpure(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path }) => !path.startsWith("src/cli/") && !path.startsWith("src/app/") && !/\.test\.ts$/.test(path))
    .flatMap(({ path, text }) => {
      const code = text.replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, "");
      return impure.filter((p) => p.test(code)).map((p) => `${path}: ${p.source}`);
    });
}

function findUnsaid(files: readonly SourceFile[]): string[] {
  return files
    .filter(({ path, text }) => {
      const head = /^(?:\/\/.*\n)+/.exec(text)?.[0] ?? "";
      const isDoor = /\/index\.ts$|\.test\.ts$|\.fixture\.ts$/.test(path);
      return head.length < 20 || (!isDoor && !/does not know/i.test(head));
    })
    .map(({ path }) => `${path}: does not open by saying what it is and what it does not know`);
}

function walk(folder: string): SourceFile[] {
  return readdirSync(folder).flatMap((name) => {
    const path = join(folder, name);
    if (statSync(path).isDirectory()) return walk(path);
    return /\.tsx?$/.test(name) ? [{ path: relative(root, path), text: readFileSync(path, "utf8") }] : [];
  });
}

const table = readTable(readFileSync(join(root, "ARCHITECTURE.md"), "utf8"));
const files = walk(join(root, "src"));

test("the table names every room that stands, and its doors are there", () => {
  expect(table.size).toBeGreaterThan(12);
  const rooms = new Set(files.map((f) => roomOf(f.path, table.keys())));
  for (const room of rooms)
    if (room !== null && room !== "cli" && room !== "app")
      expect(existsSync(join(root, "src", room, "index.ts")), room).toBe(true);
});
test("imports go only where the table lets them", () => expect(findWrongImports(files, table)).toEqual([]));
test("the core has no clock, no luck, no network and no page", () => expect(findImpure(files)).toEqual([]));
test("every file says what it is and what it does not know", () => expect(findUnsaid(files)).toEqual([]));
test("the arrows make no circle", () => {
  const done = new Set<string>();
  const open = new Set<string>();
  const visit = (room: string): void => {
    if (done.has(room)) return;
    expect(open.has(room), `circle through ${room}`).toBe(false);
    open.add(room);
    for (const next of table.get(room)?.knows ?? []) visit(next);
    open.delete(room);
    done.add(room);
  };
  for (const room of table.keys()) visit(room);
});

const planted: [what: string, file: SourceFile, finds: RegExp][] = [
  [
    "an arrow that points up",
    { path: "src/base/day.ts", text: 'import { x } from "../bench/circuit/index.ts";\n' },
    /base may not import bench\/circuit/,
  ],
  [
    "the bench that knows the school",
    { path: "src/bench/parts/a.ts", text: 'import { x } from "../../school/file/index.ts";\n' },
    /may not import school\/file/,
  ],
  [
    "a value where only types are allowed",
    { path: "src/language/a.ts", text: 'import { x } from "../school/stock/index.ts";\n' },
    /language may not import school\/stock/,
  ],
  [
    "a way in past the door",
    { path: "src/bench/parts/a.ts", text: 'import { x } from "../circuit/solveDc.ts";\n' },
    /past its index/,
  ],
  ["Node in the core", { path: "src/base/a.ts", text: 'import { x } from "node:fs";\n' }, /only cli may/],
  [
    "a re-export that hides an arrow",
    { path: "src/base/a.ts", text: 'export * from "../bench/program/index.ts";\n' },
    /base may not import bench\/program/,
  ],
  ["a dynamic import", { path: "src/base/a.ts", text: 'const x = await import("../cli/main.ts");\n' }, /base may not import cli/],
  ["a room that is not in the plan", { path: "src/attic/a.ts", text: "" }, /no room/],
];
for (const [what, file, finds] of planted)
  test(`finds ${what}`, () => expect(findWrongImports([file], table).join("\n")).toMatch(finds));
test("lets language import types", () =>
  expect(
    findWrongImports([{ path: "src/language/a.ts", text: 'import type { X } from "../school/stock/index.ts";\n' }], table),
  ).toEqual([]));
test("finds a clock in the core", () =>
  expect(findImpure([{ path: "src/base/a.ts", text: "const x = new Date();" }])).toHaveLength(1));
test("finds a file without a head", () =>
  expect(findUnsaid([{ path: "src/base/a.ts", text: "export const x = 1;\n" }])).toHaveLength(1));
