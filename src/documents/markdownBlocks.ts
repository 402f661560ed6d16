// A lesson's Markdown as blocks for paper: paragraphs, list items and tables with bold, emphasis and code, and nothing else.
//
// The text may come from a stranger's pack. It is cut into blocks here and each block's inside goes through micromark with
// everything switched off that could make a link, a picture or raw markup; those stand on the paper as they were typed.
// Blocks carry their plain text too, so that a sheet can count its lines.
// Does not know: which section it is.
import { micromark } from "micromark";
import { type Html, html, trusted } from "./html.ts";

export interface MarkdownBlock {
  readonly kind: "paragraph" | "item" | "table";
  readonly html: Html;
  readonly plain: string;
  /** Cells of a table, head first. */
  readonly rows: readonly (readonly Html[])[];
  /** The same as plain text. */
  readonly plainRows: readonly (readonly string[])[];
}

/** What may not be made from a lesson's text: blocks are cut here, links and pictures lead out of the paper. */
const off = [
  "autolink",
  "blockQuote",
  "codeFenced",
  "codeIndented",
  "definition",
  "hardBreakEscape",
  "headingAtx",
  "htmlFlow",
  "htmlText",
  "labelStartImage",
  "labelStartLink",
  "list",
  "setextUnderline",
  "thematicBreak",
];

export function markdownBlocks(source: string): MarkdownBlock[] {
  const blocks: MarkdownBlock[] = [];
  const open: { kind: MarkdownBlock["kind"]; lines: string[] } = { kind: "paragraph", lines: [] };
  const close = () => {
    if (open.lines.length > 0) blocks.push(finished(open));
    open.lines = [];
  };
  const begin = (kind: MarkdownBlock["kind"], line: string) => {
    close();
    open.kind = kind;
    open.lines = [line];
  };
  for (const line of source.split(/\r?\n/)) {
    const item = /^\s*(?:[-*+]|\d+[.)])\s+(.*)$/.exec(line);
    const isTable = /^\s*\|/.test(line);
    if (line.trim() === "") close();
    else if (item) begin("item", item[1] ?? "");
    else if (open.lines.length === 0 || isTable !== (open.kind === "table"))
      begin(isTable ? "table" : "paragraph", line.replace(/^#+\s*/, ""));
    else open.lines.push(line);
  }
  close();
  return blocks;
}

function finished({ kind, lines }: { kind: MarkdownBlock["kind"]; lines: string[] }): MarkdownBlock {
  if (kind !== "table") {
    const text = lines.map((l) => l.trim()).join(" ");
    const { made, plain } = inline(text);
    return { kind, html: made, plain, rows: [], plainRows: [] };
  }
  const cells = lines
    .filter((line) => !/^[\s|:-]+$/.test(line))
    .map((line) =>
      line
        .trim()
        .replace(/^\||\|$/g, "")
        .split("|")
        .map((cell) => inline(cell.trim())),
    );
  return {
    kind,
    html: html``,
    plain: cells
      .flat()
      .map((c) => c.plain)
      .join(" "),
    rows: cells.map((row) => row.map((c) => c.made)),
    plainRows: cells.map((row) => row.map((c) => c.plain)),
  };
}

function inline(text: string): { readonly made: Html; readonly plain: string } {
  // micromark escapes text itself and was told to make nothing but emphasis and code of it.
  const markup = micromark(text, { extensions: [{ disable: { null: off } }] })
    .replace(/^<p>|<\/p>\n?$/g, "")
    .replace(/\n/g, " ");
  const plain = markup
    .replace(/<[^>]*>/g, "")
    .replace(/&(lt|gt|quot|amp);/g, (_, name: string) => ({ lt: "<", gt: ">", quot: '"', amp: "&" })[name] ?? "");
  return { made: trusted(markup), plain };
}
