// A lesson's Markdown as a tree of plain nodes: what a page draws, and nothing that could lead out of it or run.
//
// The library's syntax tree is taken and never its markup. What could make a link, a picture or raw markup is switched off, so such
// text stands as it was typed: it may come from a stranger's pack.
// Does not know: how a node looks.
import { parse, postprocess, preprocess } from "micromark";
import { gfmTable } from "micromark-extension-gfm-table";

export interface MarkdownNode {
  readonly kind:
    | "text"
    | "paragraph"
    | "heading"
    | "list"
    | "numbers"
    | "item"
    | "table"
    | "row"
    | "cell"
    | "strong"
    | "emphasis"
    | "code";
  /** Of a text or a code. */
  readonly text: string;
  readonly children: readonly MarkdownNode[];
}

const off = ["autolink", "blockQuote", "codeIndented", "definition", "htmlFlow", "htmlText", "labelStartImage", "labelStartLink"];

/** What a token of the library becomes; a token that is not named hands its children on. */
const kinds: Readonly<Record<string, MarkdownNode["kind"]>> = {
  paragraph: "paragraph",
  atxHeading: "heading",
  setextHeading: "heading",
  listUnordered: "list",
  listOrdered: "numbers",
  table: "table",
  tableRow: "row",
  tableHead: "row",
  tableHeader: "cell",
  tableData: "cell",
  strong: "strong",
  emphasis: "emphasis",
  codeText: "code",
};

/** Marks of the notation itself: their signs are not text. */
const silent = new Set([
  "atxHeadingSequence",
  "setextHeadingLine",
  "codeFencedFence",
  "strongSequence",
  "emphasisSequence",
  "codeTextSequence",
  "escapeMarker",
  "listItemPrefix",
  "listItemIndent",
  "linePrefix",
  "lineSuffix",
  "whitespace",
  "tableDelimiterRow",
  "tableCellDivider",
  "lineEndingBlank",
  "thematicBreak",
  "hardBreakEscape",
]);

interface Growing {
  kind: MarkdownNode["kind"] | null;
  text: string;
  children: Growing[];
}

/** Reads Markdown; never throws for any text. */
export function readMarkdown(source: string): readonly MarkdownNode[] {
  const write = parse({ extensions: [gfmTable(), { disable: { null: off } }] }).document();
  const events = postprocess(write.write(preprocess()(source, undefined, true)));
  const root: Growing = { kind: null, text: "", children: [] };
  const stack: Growing[] = [root];
  let hushed = 0;
  for (const [way, token, context] of events) {
    const top = stack.at(-1) as Growing;
    if (silent.has(token.type)) {
      hushed += way === "enter" ? 1 : -1;
      if (way === "enter" && token.type === "listItemPrefix") {
        // A list has no token for its items: each prefix begins one.
        while (stack.length > 1 && stack.at(-1)?.kind !== "list" && stack.at(-1)?.kind !== "numbers") stack.pop();
        const item: Growing = { kind: "item", text: "", children: [] };
        stack.at(-1)?.children.push(item);
        stack.push(item);
      }
      continue;
    }
    if (hushed > 0) continue;
    const kind = kinds[token.type];
    if (kind !== undefined) {
      if (way === "enter") {
        const node: Growing = { kind, text: "", children: [] };
        top.children.push(node);
        stack.push(node);
      } else {
        if (kind === "list" || kind === "numbers") while (stack.length > 1 && stack.at(-1)?.kind !== kind) stack.pop();
        if (stack.length > 1) stack.pop();
      }
    } else if (way === "enter") {
      const isText = ["data", "codeTextData", "characterEscapeValue", "characterReferenceValue", "codeFlowValue"].includes(
        token.type,
      );
      if (isText) top.children.push({ kind: "text", text: context.sliceSerialize(token), children: [] });
      else if (token.type === "lineEnding" && isInline(top)) top.children.push({ kind: "text", text: " ", children: [] });
    }
  }
  return finished(root.children);
}

function isInline({ kind }: Growing): boolean {
  return kind === "paragraph" || kind === "strong" || kind === "emphasis" || kind === "code" || kind === "heading";
}

/** A head row stands in a "tableHead" and a "tableRow" of its own: one of the two is enough. */
function finished(nodes: readonly Growing[]): readonly MarkdownNode[] {
  return nodes.flatMap((node): readonly MarkdownNode[] => {
    if (node.kind === null) return finished(node.children);
    const inner = finished(node.children);
    if (node.kind === "row" && inner.every((n) => n.kind === "row")) return inner;
    return [{ kind: node.kind, text: node.text, children: inner }];
  });
}
