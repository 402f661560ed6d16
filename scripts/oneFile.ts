// Makes the page one HTML file: policy, style, a first screen that needs no script, words, packed engine, script, fonts, packed solver.
//
// In this order, because the browser paints and runs what it has read while the rest still comes from the card; before the engine
// the script would come sooner than the first painting. The engines are bundles of their own, packed, so that the start does not
// run them. The solver's WebAssembly, the largest piece, is unpacked for
// an order only. Fonts are unpacked when the page stands: heights hang on type sizes alone, so that nothing moves when they come.
// Every sign outside of ASCII is written another way: a browser keeps and reads such a file in half the room and time.
// Same input, same bytes: nothing in it depends on the day or the machine.
// Does not know: what the screens or the engines do.
import { createHash } from "node:crypto";
import { existsSync, readdirSync, readFileSync, statSync } from "node:fs";
import { fileURLToPath, pathToFileURL } from "node:url";
import { gzipSync } from "fflate";
import { build, type Plugin, type Rollup, type UserConfig } from "vite";
import { toPlainText } from "../src/app/engine/plainText.ts";
import { readShipped, type ShippedFiles } from "../src/app/engine/shippedFiles.ts";
import type { Day } from "../src/base/index.ts";
import { needsReading, readMessage } from "../src/language/say.ts";
import { firstScreen } from "./firstScreen.ts";

/** The folder of package.json, with a slash at its end; this file may run bundled, from another place below it. */
export const root = findRoot(fileURLToPath(new URL(".", import.meta.url)));
function findRoot(folder: string): string {
  return existsSync(`${folder}package.json`) ? folder : findRoot(fileURLToPath(new URL("..", pathToFileURL(folder))));
}

/** The demo's lessons lie in the time after this day, so that everybody sees the same answers. */
export const demoDay = "2026-12-01";

/** Every browser that runs the rest (structuredClone, findLast) reads this. */
export const pageTarget = ["es2022"];

/** A module of the page's script, with its bytes before they are made short; what is not used of it does not count. */
export interface PageModule {
  readonly path: string;
  readonly bytes: number;
  readonly when: "start" | "later";
}

/** How the page is built. @param entry what runs in it, from the project's root. @param tell what the script is made of. */
export function pageBuild(entry = "src/app/main.tsx", tell: (modules: readonly PageModule[]) => void = () => {}): UserConfig {
  return {
    root,
    plugins: [textsAsData(), oneFile("benchday.html", tell)],
    // Texts with choices are read when the page is built.
    resolve: { alias: { "@formatjs/icu-messageformat-parser": "@formatjs/icu-messageformat-parser/no-parser.js" } },
    oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
    build: {
      outDir: "dist",
      emptyOutDir: false,
      target: pageTarget,
      modulePreload: false,
      cssCodeSplit: false,
      assetsInlineLimit: 1e8,
      copyPublicDir: false,
      reportCompressedSize: false,
      rolldownOptions: {
        input: root + entry,
        output: { format: "es", entryFileNames: "page.js", chunkFileNames: "[name].js" },
        // Of a module nobody uses anything of, nothing is kept; style sheets and the start do something by being there.
        // The signals hook themselves into the drawing of screens.
        treeshake: {
          moduleSideEffects: (id) => /\.css$|[\\/]@preact[\\/]signals[\\/]/.test(id) || id.endsWith(entry),
        },
      },
    },
  };
}

/** The page's words stand as data before its script: reading JSON is quicker than running a program that holds it. */
function textsAsData(): Plugin {
  return {
    name: "texts-as-data",
    enforce: "pre",
    load(id) {
      // What helps a browser to fetch parts by the network has nothing to do here.
      if (/vite\/preload-helper/.test(id)) return "export const __vitePreload = (ask) => ask()";
      if (!/\/locales\/en\.json$/.test(id.replaceAll("\\", "/"))) return null;
      this.addWatchFile(id);
      return { code: 'export default JSON.parse(document.getElementById("benchday-texts").textContent)', moduleType: "js" };
    },
  };
}

/** Takes the built page script and its style, and leaves one file in their place. */
function oneFile(fileName: string, tell: (modules: readonly PageModule[]) => void): Plugin {
  return {
    name: "one-file",
    enforce: "post",
    async generateBundle(_, bundle) {
      const chunks: Rollup.OutputChunk[] = [];
      let style = "";
      for (const [name, output] of Object.entries(bundle)) {
        if (output.type === "chunk") {
          chunks.push(output);
        } else if (name.endsWith(".css")) style += String(output.source);
        else this.error(`${name} would lie beside the page; put it inside`);
        delete bundle[name];
      }
      const parts = startAndLater(chunks);
      const madeOf = (of: readonly Rollup.OutputChunk[], when: PageModule["when"]): PageModule[] =>
        of.flatMap(({ modules }) =>
          Object.entries(modules).map(([id, m]) => ({
            path: id.replaceAll("\\", "/").replace(root, ""),
            bytes: m.renderedLength,
            when,
          })),
        );
      tell(
        [...madeOf(parts.start, "start"), ...madeOf(parts.later, "later")]
          .filter((m) => m.bytes > 0)
          .sort((x, y) => y.bytes - x.bytes),
      );
      const joined = (of: readonly Rollup.OutputChunk[]) =>
        `"use strict";${of.map((c) => partOf(c.fileName, c.code, (code) => this.parse(code))).join("\n")}`;
      const script = `globalThis.benchdayParts={};${joined(parts.start)}`;
      const [loader, engine] = await Promise.all([bundleScript("loader"), bundleScript("worker")]);
      this.emitFile({ type: "asset", fileName, source: assemble({ script, later: joined(parts.later), style, loader, engine }) });
    },
  };
}

/** The chunks that must be there before the page starts, and the others, each after those that it takes from. */
function startAndLater(chunks: readonly Rollup.OutputChunk[]) {
  const order: Rollup.OutputChunk[] = [];
  const add = (name: string): void => {
    const chunk = chunks.find((c) => c.fileName === name);
    // Two that take from each other cannot both come first; the build does not make such.
    if (chunk === undefined || order.includes(chunk)) return;
    for (const needed of chunk.imports) add(needed);
    order.push(chunk);
  };
  for (const { fileName } of chunks.filter((c) => c.isEntry)) add(fileName);
  const start = [...order];
  for (const { fileName } of chunks) add(fileName);
  return { start, later: order.slice(start.length) };
}

interface Node {
  readonly type: string;
  readonly start: number;
  readonly end: number;
  readonly [field: string]: unknown;
}

/**
 * A module as a piece of a classic script: what it takes comes from `benchdayParts`, what it gives goes there, and what it asks
 * for later goes through `benchdayLater` (src/app/laterCode.ts). No name that it gives away is changed after its start.
 */
function partOf(file: string, code: string, parse: (code: string) => unknown): string {
  const edits: { at: number; end: number; text: string }[] = [];
  const name = (node: unknown) => (node as { name?: string; value?: string }).name ?? (node as { value: string }).value;
  // A short-maker writes "./later.js" as a text between back-ticks.
  const partName = (node: unknown) => {
    const { value, quasis } = node as { value?: string; quasis?: { value: { cooked: string } }[] };
    return JSON.stringify((value ?? quasis?.[0]?.value.cooked ?? "").replace(/^\.\//, ""));
  };
  /** What stands in the place of a node; null where nothing does and its inside is looked at. */
  const instead = ({ type, specifiers, source, declaration, name: own }: Node): string | null => {
    if (type === "ImportDeclaration") {
      const takes = (specifiers as Node[]).map((s) => {
        if (s.type !== "ImportSpecifier") throw new Error(`${file} takes a whole part`);
        return `${name(s.imported)}:${name(s.local)}`;
      });
      return `const{${takes.join()}}=benchdayParts[${partName(source)}];`;
    }
    if (type === "ExportNamedDeclaration") {
      if (declaration || source) throw new Error(`${file} gives in a way that is not read here`);
      const gives = (specifiers as Node[]).map((s) => `${name(s.exported)}:${name(s.local)}`);
      return `benchdayParts[${JSON.stringify(file)}]={${gives.join()}};`;
    }
    if (/^Export(?:All|Default)/.test(type)) throw new Error(`${file} holds ${type}`);
    if (type === "ImportExpression") return `benchdayLater(${partName(source)})`;
    // Where vite would later put what a browser should fetch beforehand.
    return type === "Identifier" && own === "__VITE_PRELOAD__" ? "null" : null;
  };
  const walk = (node: unknown): void => {
    if (Array.isArray(node)) {
      for (const one of node) walk(one);
      return;
    }
    if (typeof node !== "object" || node === null) return;
    const { start: at, end, type } = node as Node;
    const text = typeof type === "string" ? instead(node as Node) : null;
    if (text === null) for (const inside of Object.values(node)) walk(inside);
    else edits.push({ at, end, text });
  };
  walk(parse(code));
  let text = code;
  for (const { at, end, text: by } of edits.sort((x, y) => y.at - x.at)) text = text.slice(0, at) + by + text.slice(end);
  return `(()=>{${text.trim()}})();`;
}

interface Pieces {
  readonly script: string;
  readonly later: string;
  readonly style: string;
  readonly loader: string;
  readonly engine: string;
}

/** The whole page. */
export function assemble({ script, later, style, loader, engine }: Pieces): string {
  const shipped = toPlainText(readShipped(shippedFiles()));
  const solver = readFileSync(`${root}node_modules/highs/build/highs.wasm`);
  const version = createHash("sha256").update(engine).update(shipped).digest("hex").slice(0, 16);
  const texts = readFileSync(`${root}locales/en.json`, "utf8");
  const inline = asciiScript(script.trim());
  // Fonts are half of the style and take long to unpack.
  const faces = style.match(fontFace) ?? [];
  const rules = asciiStyle(style.replace(fontFace, "").trim());
  // What would end the block early must not stand in it; such text is written another way in the source.
  for (const [name, text] of Object.entries({ inline, loader }))
    if (/<\/script|<!--/i.test(text)) throw new Error(`${name} holds text that ends its block`);
  return [
    "<!doctype html>",
    '<html lang="en" dir="ltr">',
    "<head>",
    '<meta charset="utf-8">',
    `<meta http-equiv="Content-Security-Policy" content="${policy(inline)}">`,
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    "<title>Benchday</title>",
    `<style>${rules}</style>`,
    "</head>",
    "<body>",
    asciiMarkup(firstScreen(texts)),
    block("texts", asciiScript(readTexts(texts)).replaceAll("<", "\\u003c")),
    block("loader", asciiScript(loader)),
    block("shipped", pack(new TextEncoder().encode(shipped))),
    block("engine", pack(new TextEncoder().encode(engine)), version),
    `<script>${inline}</script>`,
    block("later", pack(new TextEncoder().encode(later))),
    `<style>${faces.join("")}</style>`,
    block("solver", pack(solver)),
    '<hr hidden id="benchday-end">',
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

/** The catalogue with every text that does more than name its values as a list of its parts (src/language/say.ts). */
function readTexts(catalogue: string): string {
  return JSON.stringify(
    JSON.parse(catalogue, (_, value) => (typeof value === "string" && needsReading(value) ? readMessage(value) : value)),
  );
}

const beyondAscii = /[^\0-\x7f]/gu;
/** In a script and in JSON such signs stand in texts and patterns only, where an escape means the same. */
const asciiScript = (text: string): string =>
  text.replace(/[^\0-\x7f]/g, (sign) => `\\u${sign.charCodeAt(0).toString(16).padStart(4, "0")}`);
const asciiStyle = (text: string): string => text.replace(beyondAscii, (sign) => `\\${sign.codePointAt(0)?.toString(16)} `);
const asciiMarkup = (text: string): string => text.replace(beyondAscii, (sign) => `&#${sign.codePointAt(0)};`);

/**
 * What the browser is told to refuse: everything from outside, every script but ours. Inline style attributes come from our own
 * drawing of screens; papers are shown in frames from blobs and carry their own stricter policy.
 */
export function policy(script: string): string {
  const hash = createHash("sha256").update(script).digest("base64");
  return [
    "default-src 'none'",
    `script-src 'sha256-${hash}' 'wasm-unsafe-eval' blob:`,
    "worker-src 'self' blob:",
    "style-src 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src data: blob:",
    "connect-src 'none'",
    "frame-src blob:",
    "form-action 'none'",
    "base-uri 'none'",
    "require-trusted-types-for 'script'",
    "trusted-types default",
  ].join("; ");
}

/** Addresses of data hold no brace. */
const fontFace = /@font-face\s*\{[^}]*\}/g;

function block(name: string, text: string, version?: string): string {
  const stamp = version === undefined ? "" : ` data-version="${version}"`;
  return `<script type="text/plain" id="benchday-${name}"${stamp}>${text}</script>`;
}

/** gzip as base64; the packer is ours to pin, so that another Node gives the same bytes. */
function pack(bytes: Uint8Array): string {
  return Buffer.from(gzipSync(bytes, { level: 9, mtime: 0 })).toString("base64");
}

/** Lessons, kits and the demo as texts by path. */
function shippedFiles(): ShippedFiles {
  const paths = [...walk("lessons"), ...walk("kits"), "demo/harbour.json"].filter((p) => /\.(ya?ml|cpp|md|json)$/.test(p));
  const files = Object.fromEntries(
    paths
      .filter((p) => !/README\.md$/.test(p))
      .sort()
      .map((p) => [p, readFileSync(root + p, "utf8")]),
  );
  return { files, demo: { path: "demo/harbour.json", today: demoDay as Day } };
}

function walk(folder: string): string[] {
  return readdirSync(root + folder).flatMap((name) => {
    const path = `${folder}/${name}`;
    return statSync(root + path).isDirectory() ? walk(path) : [path];
  });
}

/** One classic script from a file of src/app/engine, for a worker's or the page's own use. */
export async function bundleScript(name: "loader" | "worker"): Promise<string> {
  const built = (await build({
    configFile: false,
    root,
    logLevel: "error",
    plugins: [solverInPage()],
    // A worker has no document: packages that offer a form without one are taken in that form.
    resolve: { conditions: ["worker", "module", "production"] },
    build: {
      write: false,
      target: pageTarget,
      modulePreload: false,
      copyPublicDir: false,
      rolldownOptions: {
        input: `${root}src/app/engine/${name}.ts`,
        output: { format: "iife", entryFileNames: "script.js", codeSplitting: false },
      },
    },
  })) as Rollup.RollupOutput;
  const [chunk, ...others] = built.output;
  if (others.length > 0) throw new Error(`${name} should be one script`);
  return chunk.code.trim();
}

/** Takes from the solver's glue what Node needs and what would fetch: the page hands the WebAssembly over itself. */
export function solverInPage(): Plugin {
  const changes: [what: string, instead: string][] = [
    ['new URL("highs.wasm",import.meta.url).href', '"highs.wasm"'],
    [
      'const{createRequire}=await import("node:module");var require=createRequire(import.meta.url)',
      "var require=()=>{throw new Error()}",
    ],
    ["var _scriptName=import.meta.url;", 'var _scriptName="";'],
  ];
  return {
    name: "solver-in-page",
    enforce: "pre",
    transform(code, id) {
      if (!/\/highs\/build\/highs\.mjs$/.test(id)) return null;
      let changed = code;
      for (const [what, instead] of changes) {
        if (!changed.includes(what)) this.error(`the package highs no longer holds: ${what}`);
        changed = changed.replace(what, () => instead);
      }
      return { code: changed, map: null };
    },
  };
}
