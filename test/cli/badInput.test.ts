// Whatever a person gives a command: a clear message with place and remedy, the right exit status, never a stack trace.
//
// Each row: what is wrong, the files, the words of the command, the exit status, and what the message must name.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { expect, test } from "vitest";
import { benchday, freshFolder, root } from "./benchday.ts";

const demo = readFileSync(join(root, "demo/harbour.json"), "utf8");
const lesson = readFileSync(join(root, "lessons/lighthouse/lesson.yaml"), "utf8");
const program = readFileSync(join(root, "lessons/lighthouse/program.cpp"), "utf8");
const lessonFiles = (yaml: string, cpp = program): Record<string, string> => ({
  "lamp/lesson.yaml": yaml,
  "lamp/program.cpp": cpp,
});
const changed = (text: string, from: string | RegExp, to: string): string => {
  const out = text.replace(from, to);
  if (out === text) throw new Error(`nothing to change: ${from}`);
  return out;
};
const with400Pupils = () => {
  const parsed = JSON.parse(demo);
  parsed.classes = [parsed.classes[0]];
  parsed.classes[0].apart = [];
  parsed.classes[0].together = [];
  for (const l of parsed.classes[0].lessons) delete l.absent;
  parsed.classes[0].pupils = Array.from({ length: 400 }, (_, i) => ({
    id: `n${i}`,
    name: `Pupil ${i}`,
    marks: { reads: 1 + (i % 3) },
  }));
  return JSON.stringify(parsed, null, 2);
};

const cases: [what: string, files: Record<string, string>, words: string[], status: number, names: RegExp][] = [
  ["a broken YAML", lessonFiles(`${lesson}\nparts: [unclosed`), ["check", "lamp"], 1, /lesson\.yaml:\d+:\d+: /],
  [
    "a wrong unit",
    lessonFiles(changed(lesson, /ohms: 220/, "ohms: 220 V")),
    ["check", "lamp"],
    1,
    /lesson\.yaml:\d+:\d+: [\s\S]*“V”/,
  ],
  ["a leg that does not exist", lessonFiles(changed(lesson, "LED1.anode", "LED1.anod")), ["check", "lamp"], 1, /anode/],
  [
    "a net with one leg",
    lessonFiles(changed(lesson, /^nets:$/m, "nets:\n  - [board.D4]")),
    ["check", "lamp"],
    1,
    /lesson\.yaml:\d+:\d+/,
  ],
  [
    "a program that does not compile",
    lessonFiles(lesson, changed(program, /;/, "")),
    ["run", "lamp/program.cpp"],
    1,
    /program\.cpp:\d+:\d+/,
  ],
  [
    "the same, rehearsed",
    lessonFiles(lesson, "void setup() { pinMod(3, OUTPUT); }\nvoid loop() {}\n"),
    ["rehearse", "lamp"],
    1,
    /pinMod/,
  ],
  ["a program without loop", lessonFiles(lesson, "void setup() {}\n"), ["run", "lamp/program.cpp"], 1, /loop/],
  [
    "a class file of a newer version",
    { "c.json": changed(demo, "benchday-class/1", "benchday-class/2") },
    ["plan", "c.json"],
    1,
    /newer/,
  ],
  ["a class file cut in half", { "c.json": demo.slice(0, demo.length / 2) }, ["plan", "c.json"], 1, /c\.json:\d+:\d+/],
  ["an empty class file", { "c.json": "" }, ["check", "c.json"], 1, /empty/],
  ["a file that is no text", { "c.json": "\u0000\ufffd\u0001" }, ["check", "c.json"], 1, /c\.json/],
  [
    "zero pupils",
    { "c.json": changed(demo, /"pupils": \[[\s\S]*?\n {6}\]/, '"pupils": []') },
    ["plan", "c.json"],
    0,
    /c\.json:\d+:\d+/,
  ],
  ["the same name twice", { "c.json": changed(demo, "Bilal Haddad", "Amara Okonjo") }, ["check", "c.json"], 0, /Amara Okonjo/],
  ["400 pupils", { "c.json": with400Pupils() }, ["check", "c.json"], 0, /400/],
  [
    "a budget of nothing",
    { "c.json": changed(demo, '"150.00"', '"0.00"') },
    ["order", "c.json", "--today", "2026-12-01"],
    0,
    /^$/,
  ],
  ["an unknown field", { "c.json": changed(demo, '"budget"', '"bugdet"') }, ["check", "c.json"], 1, /budget/],
  ["an unknown item", { "c.json": changed(demo, '"led red", "count"', '"lde red", "count"') }, ["check", "c.json"], 1, /lde red/],
  [
    "a roster with semicolons, a mark at its start and a formula",
    { "r.csv": "\ufeffname;reads\r\n=1+1;2\r\nAda;1\r\n" },
    ["check", "r.csv"],
    0,
    /^[\s\S]*$/,
  ],
  ["a roster with the same name twice", { "r.csv": "name\nAda\nBo\nAda\n" }, ["check", "r.csv"], 0, /Ada/],
  ["a file that is not there", {}, ["plan", "nowhere.json"], 1, /nowhere\.json/],
  ["a folder for a file", { "d/x.txt": "" }, ["plan", "d"], 1, /folder/i],
  ["a folder with nothing in it", { "d/x.txt": "" }, ["check", "d"], 1, /d/],
  ["a mistyped command", {}, ["pln", "x.json"], 2, /plan/],
  ["a mistyped option", {}, ["plan", "x.json", "--jsn"], 2, /--json/],
  ["a day that does not exist", {}, ["plan", "x.json", "--today", "2027-02-30"], 2, /day/],
  ["a paper that does not exist", {}, ["print", "x.json", "tary"], 2, /tray/],
  ["no pupils for teams", {}, ["teams", "--pupils", "0"], 2, /pupil/],
  ["a pupil that is not there", {}, ["teams", "--pupils", "9", "--apart", "3,77"], 2, /77/],
  [
    "inputs that are not a list",
    { "i.json": "{}", ...lessonFiles(lesson) },
    ["run", "lamp/program.cpp", "--inputs", "i.json"],
    1,
    /i\.json:\d+:\d+/,
  ],
  ["a lesson that is nowhere", {}, ["rehearse", "moonbase"], 1, /moonbase/],
  [
    "a folder that cannot be made",
    { "c.json": demo },
    ["print", "c.json", "rota", "--out", "/proc/nowhere/papers"],
    1,
    /nowhere/,
  ],
  ["a lesson that the class does not have", { "c.json": demo }, ["print", "c.json", "tray", "--lesson", "barier"], 1, /barrier/],
];
for (const [what, files, words, status, names] of cases) {
  test(what, () => {
    const cwd = freshFolder();
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(cwd, path)), { recursive: true });
      writeFileSync(join(cwd, path), text);
    }
    const ran = benchday(words, { cwd });
    expect(ran.err).toMatch(names);
    expect(`${ran.out}${ran.err}`).not.toMatch(/\n\s+at .*:\d+:\d+|fault in Benchday/);
    expect(ran.status, ran.err).toBe(status);
    for (const [path, text] of Object.entries(files))
      expect(readFileSync(join(cwd, path), "utf8"), "inputs stay as they were").toBe(text);
  });
}

test("a wish on the machine's language cannot break a command", () =>
  expect(benchday(["teams", "--pupils", "9", "--language", "zz"]).status).toBe(2));
test("help shows examples first", () => {
  for (const command of ["check", "run", "rehearse", "plan", "order", "teams", "print"]) {
    const { out, status } = benchday([command, "--help"]);
    expect(status).toBe(0);
    expect(out.indexOf(`benchday ${command}`), command).toBeLessThan(out.indexOf("Usage"));
  }
});
