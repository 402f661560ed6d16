// Puts the sheets of a paper into the page for the printer alone, so that the browser's own print gives exactly these sheets.
//
// The paper is a whole HTML page in a frame without scripts. Its sheets are copied into a shadow tree, where the page's own
// style cannot reach them; page size and fonts, which a shadow tree cannot hold, go to the page while the sheets are there. On
// the screen nothing of it is seen.
// Does not know: what stands on a sheet.

/** @param paper the document in the frame. @returns how to take the sheets away again. */
export function layOutForPrint(paper: Document): () => void {
  const host = document.createElement("div");
  host.className = "for-print";
  host.lang = paper.documentElement.lang;
  host.dir = paper.documentElement.dir;
  const shadow = host.attachShadow({ mode: "open" });
  const { own, whole } = splitRules(paper);
  const style = new CSSStyleSheet();
  style.replaceSync(own);
  shadow.adoptedStyleSheets = [style];
  shadow.append(...[...paper.querySelectorAll("article.sheet")].map((sheet) => document.importNode(sheet, true)));
  const page = new CSSStyleSheet();
  page.replaceSync(`${whole}
    .for-print { display: none }
    @media print { body > :not(.for-print) { display: none !important } .for-print { display: block } }`);
  document.body.append(host);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, page];
  return () => {
    host.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== page);
  };
}

/** Rules for the sheets, and those that only a whole page can have: its size and its fonts. */
function splitRules(paper: Document): { own: string; whole: string } {
  const rules = [...paper.styleSheets].flatMap((sheet) => [...sheet.cssRules]);
  const isWhole = (rule: CSSRule) => rule instanceof Page(paper) || rule instanceof FontFace(paper);
  return {
    whole: rules
      .filter(isWhole)
      .map((rule) => rule.cssText)
      .join("\n"),
    own: rules
      .filter((rule) => !isWhole(rule))
      .map((rule) => rule.cssText.replace(/^html(?=\s*\{)/, ":host"))
      .join("\n"),
  };
}

/** A rule belongs to the frame's own window, and so does its class. */
const Page = (paper: Document) => (paper.defaultView as unknown as typeof globalThis).CSSPageRule;
const FontFace = (paper: Document) => (paper.defaultView as unknown as typeof globalThis).CSSFontFaceRule;
