// The one file: what it lets in, what runs at the start and what does not, how large it is, and that it is built the same twice.
import { readdirSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { gunzipSync } from "node:zlib";
import { chromium } from "playwright-core";
import { build, type Rollup } from "vite";
import { beforeAll, expect, test } from "vitest";
import { type PageModule, pageBuild } from "../../scripts/oneFile.ts";
import type { Shipped } from "../../src/app/engine/engine.ts";
import { fromPlainText, toPlainText } from "../../src/app/engine/plainText.ts";
import { loadSchool } from "../../src/cli/loadFiles.ts";
import { browser, builtFile, flags, hashOf, readBuilt } from "./enginePage.ts";

const browserTest = browser !== null || process.env.REQUIRE_TOOLS ? test : test.skip;

let modules: readonly PageModule[] = [];
let html = "";
beforeAll(async () => {
  // The runner of tests says "test" here, and packages would then come in their form for developers.
  process.env.NODE_ENV = "production";
  html = await buildPage((made) => {
    modules = made;
  });
});

async function buildPage(tell?: (made: readonly PageModule[]) => void): Promise<string> {
  const config = pageBuild(undefined, tell);
  const made = (await build({
    ...config,
    configFile: false,
    logLevel: "error",
    build: { ...config.build, write: false },
  })) as Rollup.RollupOutput;
  expect(made.output.map((o) => o.fileName)).toEqual(["benchday.html"]);
  const [page] = made.output;
  return page && "source" in (page as object) ? String((page as unknown as Rollup.OutputAsset).source) : "";
}

test("the same input gives the same bytes", async () => expect((await buildPage()) === html).toBe(true));

test("the file is at most 3 MB; the code that runs at the start grows no further", () => {
  const [script] = readBuilt(html).running;
  expect(Buffer.byteLength(html)).toBeLessThan(3_000_000);
  // The goal of the start (benchmarks/RESULTS.md, page).
  expect(Buffer.byteLength(script?.text ?? "")).toBeLessThan(130_000);
});

test("what the browser is told to refuse", () => {
  const { policy, running } = readBuilt(html);
  expect(policy.split("; ")).toEqual([
    "default-src 'none'",
    `script-src ${hashOf(running[0]?.text ?? "")} 'wasm-unsafe-eval' blob:`,
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
  ]);
});

test("the policy stands before anything that it rules, the first screen before all data, the solver after the script", () => {
  const at = (text: string) => html.indexOf(text);
  const order = ["Content-Security-Policy", "<style>", 'id="page"', 'id="benchday-engine"', "<script>", 'id="benchday-solver"'];
  expect(order.map(at)).toEqual([...order.map(at)].sort((a, b) => a - b));
  expect(order.map(at)).not.toContain(-1);
});

test("one script runs; nothing is asked of another file", () => {
  expect(readBuilt(html).running).toHaveLength(1);
  const head = html.slice(0, html.indexOf('id="benchday-texts"'));
  expect(/<link|@import|(?:href|src)\s*=\s*["']?https?:|url\(\s*["']?https?:/.exec(head)?.[0]).toBeUndefined();
});

/** What only the engine does, and packages that only it needs. The page may share small pieces: a list of words, a reading. */
const beside = [
  /^src\/(?:bench\/circuit|school\/readiness|school\/order)\//,
  /^src\/bench\/program\/(?:run|check|library)/,
  /^src\/bench\/rehearsal\/(?!result)/,
  /^src\/documents\/(?:\w*Paper|makePage|styleSheet|fonts|qrCode)/,
  /^src\/app\/engine\/(?:answerer|serve|worker|loadSolver|unpack)/,
  /^node_modules\/(?:highs|yaml|uqr|fflate|temporal-polyfill)\//,
];

test("no engine is in the page's script, by what it is made of", () => {
  expect(modules.length).toBeGreaterThan(10);
  expect(modules.filter((m) => beside.some((room) => room.test(m.path))).map((m) => `${m.path} ${m.bytes}`)).toEqual([]);
});

/** What comes after the first screen: every place but Today, the doing of acts, what only they need. */
const later = [
  /^src\/app\/places\/(?:cupboard|first|lesson|order|print|pupils|questions)\//,
  /^src\/(?:bench\/parts|school\/changes|school\/stock|documents)\//,
  /^node_modules\/(?:micromark|ical-generator|valibot)/,
];

test("the start holds nothing that the first screen does without, and no module is there twice", () => {
  const start = modules.filter((m) => m.when === "start").map((m) => m.path);
  expect(start.filter((path) => later.some((room) => room.test(path)))).toEqual([]);
  for (const room of later)
    expect(
      modules.some((m) => m.when === "later" && room.test(m.path)),
      String(room),
    ).toBe(true);
  expect(new Set(modules.map((m) => m.path)).size).toBe(modules.length);
});

/** Words that stay when code is made short: options of the solver, marks of the reader of YAML, the board's memory. */
const telltales = ["mip_rel_gap", "instantiateWasm", "yaml.alias", "primal_solution_status", "Serial.write"];

test("no engine is in the page's script, by words that give it away", () => {
  const { running, block } = readBuilt(html);
  const engine = gunzipSync(Buffer.from(block("engine"), "base64")).toString();
  for (const word of telltales) {
    expect(engine.includes(word), `${word} should give the engine away`).toBe(true);
    expect(running[0]?.text.includes(word), word).toBe(false);
  }
});

browserTest("before any script has run, and where none may, the page says what it is and what to do", async () => {
  const opened = await chromium.launch({ executablePath: browser ?? "", args: flags });
  const page = await opened.newPage({ javaScriptEnabled: false });
  await page.goto(pathToFileURL(builtFile).href);
  const text = await page.locator("#page").textContent();
  await opened.close();
  for (const words of ["Today", "Benchday", "Opening …", "JavaScript"]) expect(text).toContain(words);
});

test("the solver in the file is that of the package", async () => {
  const { readFileSync } = await import("node:fs");
  const packed = gunzipSync(Buffer.from(readBuilt(html).block("solver"), "base64"));
  expect(packed.equals(readFileSync(new URL("../../node_modules/highs/build/highs.wasm", import.meta.url)))).toBe(true);
});

test("every lesson, kit and the demo are in the file, as their readers read them", () => {
  const shipped = fromPlainText(gunzipSync(Buffer.from(readBuilt(html).block("shipped"), "base64")).toString()) as Shipped;
  const folders = readdirSync(new URL("../../lessons", import.meta.url)).filter((name) => !name.includes("."));
  expect([...shipped.lessons.keys()].sort()).toEqual(folders.sort());
  expect(shipped.kits.size).toBeGreaterThan(0);
  const school = loadSchool("demo/harbour.json").value;
  expect(shipped.demo.classFile).toEqual(school?.classFile);
  for (const [id, lesson] of school?.lessons ?? []) expect(shipped.lessons.get(id)).toEqual(lesson);
  for (const [id, kit] of school?.kits ?? []) expect(shipped.kits.get(id)).toEqual(kit);
});

test("plain data goes to text and back", () => {
  const data = { a: new Map([["x", new Set([1, 2])]]), b: [null, "$", -0.5], c: { of: 1 } };
  expect(fromPlainText(toPlainText(data))).toEqual(data);
});
