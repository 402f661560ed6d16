// Markdown of lessons as nodes; what CommonMark says the text means, and that nothing leads out or runs.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { nastyStrings } from "../../../../test/app/nastyStrings.ts";
import { type MarkdownNode, readMarkdown } from "./readMarkdown.ts";

/** "list(item(text b))" */
const written = (nodes: readonly MarkdownNode[]): string =>
  nodes.map(({ kind, text, children }) => (kind === "text" ? `"${text}"` : `${kind}(${written(children)})`)).join(" ");

/** Expected by hand after the CommonMark specification 0.31 and the table notation of GFM (both from memory). */
const cases: readonly [name: string, source: string, nodes: string][] = [
  ["a paragraph over two lines", "one\ntwo", 'paragraph("one" " " "two")'],
  ["bold, emphasis and code", "**a** *b* `c`", 'paragraph(strong("a") " " emphasis("b") " " code("c"))'],
  ["a list", "- a\n- b", 'list(item(paragraph("a")) item(paragraph("b")))'],
  ["a list in a list", "- a\n  - b\n- c", 'list(item(paragraph("a") list(item(paragraph("b")))) item(paragraph("c")))'],
  ["numbers with bold", "1. **a** b\n2. c", 'numbers(item(paragraph(strong("a") " b")) item(paragraph("c")))'],
  ["a heading", "### a", 'heading("a")'],
  ["a table", "| a | b |\n| --- | --- |\n| 1 | **2** |", 'table(row(cell("a") cell("b")) row(cell("1") cell(strong("2"))))'],
  ["markup stands as typed", "<b>x</b>", 'paragraph("<b>x</b>")'],
  ["an escaped star", "a \\* b", 'paragraph("a " "*" " b")'],
  ["nothing", "", ""],
];
for (const [name, source, nodes] of cases) test(name, () => expect(written(readMarkdown(source))).toBe(nodes));

const allText = (nodes: readonly MarkdownNode[]): string => nodes.map((n) => n.text + allText(n.children)).join("");

test("a link is not made, and its words stay", () => {
  const nodes = readMarkdown("[here](javascript:alert(1)) ![x](y)");
  expect(allText(nodes)).toContain("here");
  expect(JSON.stringify(nodes)).toContain("javascript:alert(1)");
});

test("no text of the shipped lessons is lost", () => {
  const source = readFileSync(new URL("../../../../lessons/quay-lamp-at-dusk/text/en.md", import.meta.url), "utf8");
  const words = (text: string): readonly string[] => text.match(/[\p{L}\d]+/gu) ?? [];
  expect(words(allText(readMarkdown(source)).replace(/\s+/g, " ")).join("").length).toBe(
    words(source.replace(/^\d+\. /gm, "")).join("").length,
  );
});

test("any text is read", () => {
  for (const text of nastyStrings(300)) expect(() => readMarkdown(text)).not.toThrow();
});
