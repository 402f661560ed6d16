// Reads the part of YAML 1.2 that our files use into a tree with places.
//
// The library parses; we refuse whatever JSON has no counterpart for. Anchors and references could let a kilobyte stand for
// a thousand million nodes, tags and directives could change what a word means, and a merge key hides where a value comes
// from. By the core schema `no`, `12:30` and `4k7` are text. Pieces are counted while the text is still being cut into
// tokens, so that depth never becomes recursion. Equal names are found by document.ts, which works for JSON too and in linear time.
// Does not know: places as lines and columns, what the data mean.
import { Composer, type CST, isAlias, isMap, isScalar, isSeq, Lexer, Parser, type Document as YamlDocument } from "yaml";
import type { Complaint, DocumentLimits, Tree, TreeOutcome } from "./document.ts";
import { shown } from "./document.ts";

/** Reads the whole text. Either a tree or at least one complaint is given, never both. */
export function readYamlTree(text: string, limits: DocumentLimits): TreeOutcome {
  const { tokens, complaint } = cutIntoTokens(text, limits);
  if (complaint !== null) return { tree: null, complaints: [complaint] };
  const composer = new Composer({
    version: "1.2",
    schema: "core",
    merge: false,
    uniqueKeys: false,
    logLevel: "silent",
    strict: true,
  });
  const documents = [...composer.compose(tokens, true, text.length)];
  const complaints: Complaint[] = [];
  for (const token of tokens)
    if (token.type === "directive")
      complaints.push({ code: "document.refused", at: token.offset, what: "directive", found: shown(token.source) });
  const [document, second] = documents;
  if (second) complaints.push({ code: "document.refused", at: startOf(second, text), what: "several documents", found: "---" });
  const errors = document?.errors ?? [];
  // A line too far to the right is reported in two ways; the one that tells it from a colon in a text is kept.
  const shifted = new Set(errors.filter((e) => e.code === "MULTILINE_IMPLICIT_KEY").map((e) => e.pos[0]));
  for (const error of errors.filter((e) => e.code !== "BLOCK_AS_IMPLICIT_KEY" || !shifted.has(e.pos[0])))
    complaints.push(complaintOf(error.code, error.message, error.pos, text));
  const contents = document?.contents ?? null;
  if (complaints.length === 0 && (contents === null || (isScalar(contents) && contents.value === null)))
    complaints.push({ code: "document.empty", at: 0 });
  const tree = toTree(contents, text, limits, complaints);
  return complaints.length > 0 ? { tree: null, complaints } : { tree, complaints: [] };
}

/** Cuts the text into the library's tokens and stops before they become too many or too deep. */
function cutIntoTokens(text: string, limits: DocumentLimits): { tokens: CST.Token[]; complaint: Complaint | null } {
  const parser = new Parser();
  const tokens: CST.Token[] = [];
  // Every node has a few marks of its own: blanks, a comment, a colon, the end of its line.
  let left = limits.nodes * 12;
  let at = 0;
  for (const lexeme of new Lexer().lex(text)) {
    for (const token of parser.next(lexeme)) tokens.push(token);
    left -= 1;
    if (left < 0) return { tokens, complaint: { code: "document.tooMany", at, most: limits.nodes } };
    // A document and a scalar stand on the stack beside the collections; toTree counts exactly.
    if (parser.stack.length > limits.depth + 4)
      return { tokens, complaint: { code: "document.tooDeep", at, most: limits.depth } };
    at = parser.offset;
  }
  for (const token of parser.end()) tokens.push(token);
  return { tokens, complaint: null };
}

function startOf(document: YamlDocument.Parsed | YamlDocument, text: string): number {
  return Math.min(text.length, document.range?.[0] ?? 0);
}

/** The library's errors in our codes. Its sentences are not passed on; only the sign that it misses is taken from them. */
function complaintOf(code: string, message: string, [at, end]: readonly [number, number], text: string): Complaint {
  const found = shown(text.slice(at, at + 60));
  if (text.slice(at).trim() === "") return { code: "document.cutOff", at, expected: missingSign(message) };
  if (code === "TAB_AS_INDENT") return { code: "document.tab", at };
  if (code === "BAD_INDENT" && /^flow/i.test(message))
    return { code: "document.unexpected", at, expected: missingSign(message), found };
  if (code === "BAD_INDENT") return { code: "document.indent", at, found };
  // A value that goes on in a further line, which has a name of its own: that line stands too far to the right.
  if (code === "MULTILINE_IMPLICIT_KEY") {
    const last = text.lastIndexOf("\n", Math.max(at, end - 1)) + 1;
    const from = last > at ? last + text.slice(last).search(/\S/) : at;
    return { code: "document.indent", at: from, found: shown(text.slice(from, from + 60)) };
  }
  if (code === "BLOCK_AS_IMPLICIT_KEY") return { code: "document.colon", at, found };
  if (code === "BAD_DQ_ESCAPE") return { code: "document.badEscape", at, found };
  if (code === "BAD_ALIAS" || code === "ALIAS_PROPS") return { code: "document.refused", at, what: "reference", found };
  if (code === "MULTIPLE_ANCHORS") return { code: "document.refused", at, what: "anchor", found };
  if (code === "TAG_RESOLVE_FAILED" || code === "MULTIPLE_TAGS") return { code: "document.refused", at, what: "tag", found };
  if (code === "BAD_DIRECTIVE") return { code: "document.refused", at, what: "directive", found };
  return { code: "document.unexpected", at, expected: missingSign(message), found };
}

/** The sign that is missing, or nothing. */
function missingSign(message: string): string {
  if (/flow map/i.test(message)) return "}";
  if (/flow seq/i.test(message)) return "]";
  if (/'quote/.test(message)) return "'";
  if (/"quote/.test(message)) return '"';
  return /Missing (,|:)/.exec(message)?.[1] ?? "";
}

/** Turns the library's nodes into ours. Depth was limited before. */
function toTree(root: unknown, text: string, limits: DocumentLimits, complaints: Complaint[]): Tree | null {
  let nodes = 0;
  let isFull = false;
  const nothing = (at: number): Tree => ({ at, kind: "value", value: null });

  const refuseProperties = (
    node: { anchor?: string | undefined; tag?: string | undefined; range?: readonly number[] | null | undefined },
    at: number,
  ) => {
    if (node.anchor) complaints.push({ code: "document.refused", at, what: "anchor", found: shown(`&${node.anchor}`) });
    if (node.tag)
      complaints.push({ code: "document.refused", at, what: "tag", found: shown(node.tag.replace("tag:yaml.org,2002:", "!!")) });
  };

  const convert = (node: unknown, around: number, depth: number): Tree => {
    if (node === null || node === undefined) return nothing(around);
    const at = (node as { range?: readonly number[] | null }).range?.[0] ?? around;
    nodes += 1;
    if (isFull) return nothing(at);
    if (nodes > limits.nodes || depth > limits.depth) {
      isFull = true;
      complaints.push(
        nodes > limits.nodes
          ? { code: "document.tooMany", at, most: limits.nodes }
          : { code: "document.tooDeep", at, most: limits.depth },
      );
      return nothing(at);
    }
    if (isAlias(node)) {
      complaints.push({ code: "document.refused", at, what: "reference", found: shown(`*${node.source}`) });
      return nothing(at);
    }
    if (isScalar(node)) {
      refuseProperties(node, at);
      return { at, kind: "value", value: scalarValue(node.value, node.source, at, complaints) };
    }
    if (isSeq(node)) {
      refuseProperties(node, at);
      return { at, kind: "list", items: node.items.map((item) => convert(item, at, depth + 1)) };
    }
    if (!isMap(node)) return nothing(at);
    refuseProperties(node, at);
    const entries: { at: number; name: string; tree: Tree }[] = [];
    for (const pair of node.items) {
      const nameAt = (pair.key as { range?: readonly number[] | null } | null)?.range?.[0] ?? at;
      if (!isScalar(pair.key) || pair.key.value === null) {
        complaints.push({ code: "document.badName", at: nameAt, found: shown(text.slice(nameAt, nameAt + 40)) });
        continue;
      }
      refuseProperties(pair.key, nameAt);
      // As written: 1 and "1" are the same name, and 1.10 is not 1.1.
      const name = typeof pair.key.value === "string" ? pair.key.value : String(pair.key.source ?? pair.key.value);
      if (name === "<<") complaints.push({ code: "document.refused", at: nameAt, what: "merge", found: "<<" });
      entries.push({ at: nameAt, name, tree: convert(pair.value, nameAt, depth + 1) });
    }
    return { at, kind: "mapping", entries };
  };
  return root === null ? null : convert(root, 0, 0);
}

function scalarValue(
  value: unknown,
  source: string | undefined,
  at: number,
  complaints: Complaint[],
): null | boolean | number | string {
  if (typeof value === "number" && !Number.isFinite(value)) {
    complaints.push({ code: "document.badNumber", at, found: shown(source ?? String(value)) });
    return null;
  }
  if (value === null || typeof value === "boolean" || typeof value === "number" || typeof value === "string") return value;
  return String(value);
}
