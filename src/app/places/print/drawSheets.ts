// Draws the sheets of a paper into a shadow tree, where the page's own style and the paper's cannot meet.
//
// Page size and fonts, which a shadow tree cannot hold, go to the whole page while the sheets are there.
// Does not know: what stands on a sheet, where the sheets are shown.
import type { PaperElement, PaperPiece, ReadPaper } from "./readSheets.ts";

/** Fills a host; drawing again takes the place of what was there. */
export function drawSheets(host: HTMLElement, paper: ReadPaper): void {
  const shadow = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  host.lang = paper.language;
  host.dir = paper.direction;
  const style = new CSSStyleSheet();
  style.replaceSync(splitRules(paper.style).own);
  shadow.adoptedStyleSheets = [style];
  shadow.replaceChildren(...paper.sheets.map((sheet) => element(sheet, false)));
}

/** Gives the page the fonts of the papers, and for the printer their size; only `.for-print` is printed. @returns how to take it back. */
export function dressPage(paper: ReadPaper): () => void {
  const page = new CSSStyleSheet();
  page.replaceSync(`${splitRules(paper.style).whole}
    .for-print { display: none }
    @media print { body > :not(.for-print) { display: none !important } .for-print { display: block } }`);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== page);
  };
}

function splitRules(style: string): { readonly own: string; readonly whole: string } {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(style);
  const rules = [...sheet.cssRules];
  const isWhole = (rule: CSSRule) => rule instanceof CSSPageRule || rule instanceof CSSFontFaceRule;
  return {
    whole: rules.filter(isWhole).map(textOf).join("\n"),
    own: rules
      .filter((rule) => !isWhole(rule))
      .map(textOf)
      .join("\n"),
  };
}

/** A rule for the whole document is one for the host here. */
function textOf(rule: CSSRule): string {
  return rule.cssText.replace(/^html(?=\s*\{)/, ":host");
}

function element({ name, attributes, children }: PaperElement, inDrawing: boolean): Element {
  const isDrawing = inDrawing || name === "svg";
  const made = isDrawing ? document.createElementNS("http://www.w3.org/2000/svg", name) : document.createElement(name);
  for (const [key, value] of attributes) made.setAttribute(key, value);
  made.append(...children.map((piece) => node(piece, isDrawing)));
  return made;
}

function node(piece: PaperPiece, inDrawing: boolean): Node {
  return typeof piece === "string" ? document.createTextNode(piece) : element(piece, inDrawing);
}
