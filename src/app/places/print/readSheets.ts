// Reads the sheets out of a paper's HTML, as `documents` writes it, into a tree that can be drawn without trusting any markup.
//
// A page from a card may hand no text to the browser as markup (its policy forbids it, and a frame of its own cannot be looked
// into). The papers are in a small, strict HTML: every element closed, every value in double quotes, five entities. Reading just
// that is a page of code, and anything else makes the answer null rather than a half sheet.
// Does not know: the browser's tree (drawSheets.ts), what stands on a sheet.

export interface PaperElement {
  readonly name: string;
  readonly attributes: readonly (readonly [name: string, value: string])[];
  readonly children: readonly PaperPiece[];
}
export type PaperPiece = string | PaperElement;

export interface ReadPaper {
  readonly language: string;
  readonly direction: "ltr" | "rtl";
  readonly style: string;
  readonly sheets: readonly PaperElement[];
}

/** What the papers are made of, and nothing that could load or run. */
const allowed = new Set(
  "article h1 h2 h3 p ul ol li table caption thead tbody tfoot tr th td div span b strong em i small sub sup br hr footer header section bdi code pre blockquote a figure figcaption svg g path rect circle ellipse line polyline polygon text tspan title use defs clipPath pattern col colgroup dl dt dd".split(
    " ",
  ),
);
const closedAtOnce = new Set(["br", "hr", "col"]);
const refusedAttribute = /^(on|href$|src|xlink|srcdoc|action|form)/i;
const entities: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

/** @returns the sheets, or null where the text is not a paper of ours. */
export function readSheets(html: string): ReadPaper | null {
  const head = /^<!doctype html>\s*<html lang="([^"]*)" dir="(ltr|rtl)">/.exec(html);
  const style = /<style>([^<]*)<\/style>/.exec(html);
  const body = /<body>\s*([\s\S]*)<\/body>\s*<\/html>\s*$/.exec(html);
  if (!head || !style || !body) return null;
  const pieces = readPieces(body[1] ?? "");
  if (pieces === null) return null;
  const sheets = pieces.filter((piece): piece is PaperElement => typeof piece !== "string");
  const isWhole = sheets.every(({ name }) => name === "article") && pieces.every((p) => typeof p !== "string" || p.trim() === "");
  return isWhole
    ? { language: head[1] ?? "", direction: head[2] === "rtl" ? "rtl" : "ltr", style: style[1] ?? "", sheets }
    : null;
}

interface Open {
  readonly name: string;
  readonly attributes: PaperElement["attributes"];
  readonly children: PaperPiece[];
}

function readPieces(text: string): PaperPiece[] | null {
  const root: Open = { name: "", attributes: [], children: [] };
  const stack: Open[] = [root];
  // One pass: a run of text, an end tag, or a start tag with its values.
  const token =
    /([^<]+)|<\/([A-Za-z][A-Za-z0-9]*)>|<([A-Za-z][A-Za-z0-9]*)((?:\s+[A-Za-z_:][A-Za-z0-9_:.-]*(?:="[^"]*")?)*)\s*(\/?)>/y;
  while (token.lastIndex < text.length) {
    const found = token.exec(text);
    const top = stack.at(-1)!;
    if (!found) return null;
    const [, words, ending, name, values = "", slash] = found;
    if (words !== undefined) {
      const read = unescaped(words);
      if (read === null) return null;
      top.children.push(read);
    } else if (ending !== undefined) {
      if (top.name !== ending || stack.length === 1) return null;
      stack.pop();
      stack.at(-1)!.children.push(top);
    } else if (name !== undefined) {
      const attributes = readAttributes(values);
      if (!allowed.has(name) || attributes === null) return null;
      const element: Open = { name, attributes, children: [] };
      if (slash === "/" || closedAtOnce.has(name)) top.children.push(element);
      else stack.push(element);
    }
  }
  return stack.length === 1 ? root.children : null;
}

/** Links and whatever loads or runs are left out: on paper they do nothing. */
function readAttributes(text: string): PaperElement["attributes"] | null {
  const attributes: [string, string][] = [];
  for (const [, name = "", value = ""] of text.matchAll(/\s+([A-Za-z_:][A-Za-z0-9_:.-]*)(?:="([^"]*)")?/g)) {
    const read = unescaped(value);
    if (read === null) return null;
    if (!refusedAttribute.test(name) && !/url\(|expression/i.test(read)) attributes.push([name, read]);
  }
  return attributes;
}

function unescaped(text: string): string | null {
  if (/&(?!(?:amp|lt|gt|quot|#39);)/.test(text)) return null;
  return text.replace(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => entities[name] ?? "");
}
