// Files as people and power cuts leave them. Lines and columns were counted by hand; what is YAML 1.2 and what is JSON says the
// YAML 1.2.2 specification (core schema, 10.3) and RFC 8259.
import { expect, test } from "vitest";
import { cpuMilliseconds } from "../../test/cpuTime.ts";
import { documentLimits, type Notation } from "./document.ts";
import { readJson } from "./readJson.ts";
import { readYaml } from "./readYaml.ts";

const read = { json: readJson, yaml: readYaml };

const reads: [name: string, notation: Notation, text: string, data: unknown][] = [
  ["a mapping with a list", "yaml", "a: 1\nb: [x, {c: d}]\n", { a: 1, b: ["x", { c: "d" }] }],
  ["words that old YAML took for yes and no", "yaml", "a: no\nb: on\nc: y", { a: "no", b: "on", c: "y" }],
  ["times and values stay text", "yaml", "a: 12:30\nb: 4k7\nc: 0s", { a: "12:30", b: "4k7", c: "0s" }],
  ["numbers of the core schema", "yaml", "a: 010\nb: 0x1F\nc: -2.5e3", { a: 10, b: 31, c: -2500 }],
  ["true, false and nothing", "yaml", "a: true\nb: false\nc: null\nd:", { a: true, b: false, c: null, d: null }],
  ["a folded text", "yaml", "a: >\n  one\n  two\n", { a: "one two\n" }],
  ["comments", "yaml", "# before\na: 1 # behind\n", { a: 1 }],
  ["a byte order mark and Windows line ends", "yaml", "\ufeffa: 1\r\nb: 2\r\n", { a: 1, b: 2 }],
  ["a name that looks like a number", "yaml", "220: 5", { 220: 5 }],
  ["names that contain blanks", "yaml", "resistor 4k7: 3\n", { "resistor 4k7": 3 }],
  ["a decomposed letter becomes one (NFC)", "yaml", "a: e\u0301", { a: "é" }],
  ["overrides of direction vanish", "yaml", "a: x\u202ey\u2066z", { a: "xyz" }],
  [
    "JSON with everything",
    "json",
    '{"a": [1, -2.5e3, true, false, null, "x"], "b": {}}',
    { a: [1, -2500, true, false, null, "x"], b: {} },
  ],
  ["JSON escapes", "json", '"\\"\\\\\\/\\b\\f\\n\\r\\t\\u00e9"', '"\\/\b\f\n\r\té'],
  ["half a surrogate pair", "json", '"\\ud800"', "\ufffd"],
  ["JSON with a byte order mark", "json", "\ufeff[]", []],
];
for (const [name, notation, text, data] of reads)
  test(`reads ${name}`, () => {
    const { value, problems } = read[notation]("f", text);
    expect(problems).toEqual([]);
    expect(JSON.parse(JSON.stringify(value?.data))).toEqual(data);
  });

const refused: [name: string, notation: Notation, text: string, code: string, line: number, column: number][] = [
  ["nothing at all", "yaml", "", "document.empty", 1, 1],
  ["only a comment", "yaml", "# nothing\n", "document.empty", 1, 1],
  ["a tab as indent", "yaml", "a:\n\tb: 1", "document.tab", 2, 1],
  ["a line too far to the right", "yaml", "a: 1\n b: 2", "document.indent", 2, 2],
  ["a line too far to the left", "yaml", "a:\n    b: 1\n  c: 2", "document.indent", 3, 1],
  ["a colon in a text", "yaml", "title: Lamp: part 2", "document.colon", 1, 8],
  ["a quote left open", "yaml", "a: 'x", "document.cutOff", 1, 6],
  ["a list left open", "yaml", "a: [1, 2", "document.cutOff", 1, 9],
  ["a mapping left open", "yaml", "a: {b: 1", "document.cutOff", 1, 9],
  ["a bracket of the wrong kind", "yaml", "a: [1, 2}\nb: 1", "document.unexpected", 1, 9],
  ["something after a mapping", "yaml", "{a: 1} x", "document.unexpected", 1, 8],
  ["a sign that begins nothing", "yaml", "a: @x", "document.unexpected", 1, 4],
  // What carries an anchor or a tag is pointed at, not the sign before it.
  ["an anchor", "yaml", "a: &x 1", "document.refused", 1, 7],
  ["a reference", "yaml", "a: 1\nb: *x", "document.refused", 2, 4],
  ["a tag", "yaml", "a: !!binary abc", "document.refused", 1, 13],
  ["a tag of somebody's own", "yaml", "a: !x abc", "document.refused", 1, 7],
  ["a merge key", "yaml", "a: 1\n<<: {b: 1}", "document.refused", 2, 1],
  ["a directive", "yaml", "%YAML 1.1\n---\na: no", "document.refused", 1, 1],
  ["two documents", "yaml", "a: 1\n---\nb: 2", "document.refused", 2, 1],
  ["the same name twice", "yaml", "a: 1\nb: 2\na: 3", "document.twice", 3, 1],
  ["the same name twice, once quoted", "yaml", '1: x\n"1": y', "document.twice", 2, 1],
  ["a name that is a list", "yaml", "? [a]\n: b", "document.badName", 1, 3],
  ["__proto__", "yaml", "a: 1\n__proto__: {b: 1}", "document.badName", 2, 1],
  ["constructor", "yaml", "{a: {constructor: 1}}", "document.badName", 1, 6],
  ["prototype", "json", '{"prototype": 1}', "document.badName", 1, 2],
  ["a number without end", "yaml", "a: 1e999", "document.badNumber", 1, 4],
  ["not a number", "yaml", "a: .nan", "document.badNumber", 1, 4],
  ["an escape that is none", "yaml", 'a: "\\q"', "document.badEscape", 1, 5],
  ["a text as long as a book", "yaml", `a: ${"x".repeat(10_001)}`, "document.longText", 1, 4],
  ["33 lists in each other", "yaml", `${"[".repeat(34)}${"]".repeat(34)}`, "document.tooDeep", 1, 34],
  ["JSON: nothing at all", "json", "", "document.empty", 1, 1],
  ["JSON: cut after a name", "json", '{\n"a":', "document.cutOff", 2, 5],
  ["JSON: cut in a text", "json", '{"a": "x', "document.cutOff", 1, 9],
  ["JSON: cut in a word", "json", '{"a": tru', "document.cutOff", 1, 10],
  ["JSON: cut in an escape", "json", '{"a": "\\', "document.cutOff", 1, 9],
  ["JSON: cut in a list", "json", "[1, 2\n", "document.cutOff", 2, 1],
  ["JSON: a comma too many", "json", '{"a": 1,}', "document.unexpected", 1, 9],
  ["JSON: a comma too few", "json", "[1 2]", "document.unexpected", 1, 4],
  ["JSON: a name without quotes", "json", "{a: 1}", "document.unexpected", 1, 2],
  ["JSON: a comment", "json", "// x\n{}", "document.unexpected", 1, 1],
  ["JSON: a line end in a text", "json", '{"a": "x\n"}', "document.unexpected", 1, 9],
  ["JSON: something after the end", "json", '{"a": 1}\nx', "document.trailing", 2, 1],
  ["JSON: a brace too many", "json", "{}}", "document.trailing", 1, 3],
  ["JSON: a zero before a number", "json", "[01]", "document.badNumber", 1, 2],
  ["JSON: the same name twice", "json", '{"a": 1,\n "a": 2}', "document.twice", 2, 2],
  ["JSON: a bad escape", "json", '"\\u12g4"', "document.badEscape", 1, 2],
  ["JSON: 33 lists in each other", "json", "[".repeat(34), "document.tooDeep", 1, 34],
];
for (const [name, notation, text, code, line, column] of refused)
  test(`refuses ${name}`, () => {
    const { value, problems } = read[notation]("f", text);
    expect(value).toBe(null);
    expect({ code: problems[0]?.code, place: problems[0]?.place }).toEqual({ code, place: { file: "f", line, column } });
  });

test("the limits hold", () => {
  const codes = (text: string, notation: Notation) => read[notation]("f", text).problems.map((p) => p.code);
  const many = documentLimits.yaml.nodes + 1;
  expect(codes("- 1\n".repeat(many), "yaml")).toEqual(["document.tooMany"]);
  expect(codes(" ".repeat(documentLimits.yaml.characters + 1), "yaml")).toEqual(["document.tooLarge"]);
  expect(readJson("f", "[1,2,3]", { ...documentLimits.json, nodes: 3 }).problems[0]?.code).toBe("document.tooMany");
});

test("places of values, of names, and of what is not there", () => {
  const { value } = readYaml("f", "parts:\n  R1: { part: resistor }\nnets:\n  - [a, b]\n");
  expect(value?.place(["parts", "R1", "part"])).toEqual({ file: "f", line: 2, column: 15 });
  expect(value?.namePlace(["parts", "R1", "part"])).toEqual({ file: "f", line: 2, column: 9 });
  expect(value?.place(["nets", 0, 1])).toEqual({ file: "f", line: 4, column: 9 });
  expect(value?.place(["parts", "R1", "ohms"])).toEqual({ file: "f", line: 2, column: 7 });
});

// Files made to stop a reader: each is answered within the second that a person would wait.
const hostile: [name: string, text: string][] = [
  ["open brackets", "[".repeat(999_999)],
  ["open braces", "{".repeat(999_999)],
  ["dashes", "- ".repeat(499_999)],
  ["question marks", "? ".repeat(499_999)],
  ["anchors", "&a ".repeat(333_333)],
  ["references", "*a\n".repeat(333_333)],
  ["names that repeat", "a: 1\n".repeat(199_999)],
  ["lines of one text", "a\n".repeat(499_999)],
  ["empty lines", "\n".repeat(999_999)],
  ["quotes", "'".repeat(999_999)],
  ["colons", ":".repeat(999_999)],
  ["nested lists in one line", "[a,".repeat(333_333)],
  [
    "a bomb of references",
    `a: &a [x,x,x,x,x,x,x,x,x]\n${"bcdefghi"
      .split("")
      .map((c, i) => `${c}: &${c} [${`*${"abcdefghi"[i]},`.repeat(9)}]`)
      .join("\n")}`,
  ],
];
for (const [name, text] of hostile)
  test(`answers ${name} soon`, () => {
    const busy = cpuMilliseconds(() => expect(readYaml("f", text).problems.length).toBeGreaterThan(0));
    // At most 0.7 s on the machine it was written on; a slower one may take three times that.
    expect(busy).toBeLessThan(2000);
  });
