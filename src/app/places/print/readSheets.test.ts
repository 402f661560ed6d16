// Papers are read as they are written: every shipped kind of paper, and nothing else.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { makePaper } from "../../../documents/index.ts";
import { languageFor } from "../../../language/index.ts";
import { type ClassFile, readClassFile } from "../../../school/file/index.ts";
import { type PaperPiece, readSheets } from "./readSheets.ts";

const demo = readClassFile("harbour.json", readFileSync("demo/harbour.json", "utf8")).value as ClassFile;
const nasty = "<script>alert(\"1\")</script> & 'quotes' </article>";
const labels = makePaper(
  "label",
  { classFile: { ...demo, stock: [{ item: "led red", count: 3, box: nasty }] } },
  { language: languageFor("en"), paperSize: "A4" },
);

const page = (body: string, head = '<!doctype html>\n<html lang="en" dir="ltr">\n<head><style>p{color:#000}</style></head>\n') =>
  `${head}<body>\n${body}</body>\n</html>\n`;
const textOf = (piece: PaperPiece): string => (typeof piece === "string" ? piece : piece.children.map(textOf).join(""));

test("as many sheets as the paper says, with its style", () => {
  const read = readSheets(labels.html);
  expect(read?.sheets).toHaveLength(labels.sheets);
  expect(read?.style).toContain("@page");
});
test("what a stranger wrote comes as text", () => expect(readSheets(labels.html)?.sheets.map(textOf).join("")).toContain(nasty));

const read: [name: string, body: string, text: string][] = [
  ["a sheet", '<article class="sheet">a</article>', "a"],
  ["elements in each other", "<article><p>a<b>b</b>c</p></article>", "abc"],
  ["entities", "<article>&lt;&amp;&gt;&quot;&#39;</article>", "<&>\"'"],
  ["a drawing", '<article><svg viewBox="0 0 1 1"><path d="M0 0"/></svg>x</article>', "x"],
  ["a line break without an end", "<article>a<br>b<br />c</article>", "abc"],
];
for (const [name, body, text] of read) test(name, () => expect(readSheets(page(body))?.sheets.map(textOf).join("")).toBe(text));

test("what loads or runs is left out", () =>
  expect(
    readSheets(page('<article onclick="a()" class="sheet"><a href="#x" style="background:url(x)">b</a></article>'))?.sheets,
  ).toEqual([
    {
      name: "article",
      attributes: [["class", "sheet"]],
      children: [{ name: "a", attributes: [], children: ["b"] }],
    },
  ]));

const refused: [name: string, html: string][] = [
  ["nothing", ""],
  ["a page of the web", "<!doctype html><html><body><article>a</article></body></html>"],
  ["an element that was not closed", page("<article><p>a</article>")],
  ["an end without its start", page("<article>a</p></article>")],
  ["a script", page("<article><script>alert(1)</script></article>")],
  ["a frame", page('<article><iframe src="x"></iframe></article>')],
  ["a picture from somewhere", page('<article><img src="http://x"></article>')],
  ["an entity that papers do not use", page("<article>&nbsp;</article>")],
  ["a bare sign", page("<article>a < b</article>")],
  ["a value without quotes", page("<article class=sheet>a</article>")],
  ["text beside the sheets", page("hello <article>a</article>")],
  [
    "a style that ends early",
    page("<article>a</article>", '<!doctype html>\n<html lang="en" dir="ltr">\n<head><style>a</b></style></head>'),
  ],
  ["a paper that was cut", labels.html.slice(0, -200)],
];
for (const [name, html] of refused) test(`${name} is no paper`, () => expect(readSheets(html)).toBe(null));

test("reading is linear: ten times the text takes less than thirty times as long", () => {
  const time = (times: number) => {
    const html = page("<article><p>a &amp; b</p></article>".repeat(times));
    const start = performance.now();
    readSheets(html);
    return performance.now() - start;
  };
  time(5000);
  expect(time(50_000)).toBeLessThan(30 * Math.max(1, time(5000)));
});
