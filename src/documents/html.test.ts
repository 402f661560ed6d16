// No text of a person becomes markup: 300 nasty strings, alone and in every place of every paper.
//
// The page is taken apart by a strict grammar: between tags stands no "<", and a tag has a known name and known attributes in
// double quotes. Anything that slipped through would be a tag or an attribute that the grammar does not know.
import { describe, expect, test } from "vitest";
import { everyPaper, inventedGroup, inventedLesson, withTexts } from "../../test/pictures/invented.ts";
import { languageFor } from "../language/index.ts";
import { html, htmlText, user } from "./html.ts";
import { makePapers } from "./makePaper.ts";
import { markdownBlocks } from "./markdownBlocks.ts";

const seeds = [
  "<script>alert(1)</script>",
  "</script><script>alert(1)</script>",
  "<img src=x onerror=alert(1)>",
  '"><svg onload=alert(1)>',
  "' onmouseover='alert(1)",
  "</title><script>x</script>",
  "</style><script>x</script>",
  "<!--",
  "-->",
  "<![CDATA[x]]>",
  "&lt;b&gt;",
  "&#60;b&#62;",
  "&",
  "<",
  ">",
  '"',
  "'",
  "`",
  "#{1+1}",
  "{{1+1}}",
  "{n, plural, one {#}}",
  "=1+1",
  "+1",
  "-1",
  "@SUM(A1)",
  "\t=1",
  "\u202eevil\u202c",
  "\u2066evil\u2069",
  "\u2068",
  "\u200f\u200e",
  "שלום עולם",
  "مرحبا بالعالم",
  "مَرْحَبًا <b>",
  "نور",
  "अनुष्का",
  "日本語の名前",
  "👩‍🔬 Zoë",
  "\ud800",
  "\udc00x",
  "\u0000\u0001\u0008",
  "\u007f\u0085",
  "a\u0300\u0301\u0302\u0303",
  "ﷺ",
  "\ufeffname",
  "\ue000\ue001",
  "javascript:alert(1)",
  "[x](javascript:alert(1))",
  "![x](http://example.com/x.png)",
  "<http://example.com>",
  "| a | b |\n| --- | --- |\n| <b> | c |",
  "# heading\n<b>",
  "    <b>code</b>",
  "```\n<b>\n```",
  "- <b>item</b>",
  "1. <i>item</i>",
  "[a]: http://example.com\n[a]",
  "x".repeat(400),
  "W ".repeat(200),
  "W".repeat(90),
  " ",
];
const frames = [
  (s: string) => s,
  (s: string) => `Mara ${s}`,
  (s: string) => `${s}${s}`,
  (s: string) => `${s}\n${s}`,
  (s: string) => `"${s}'`,
];
const nasty = seeds.flatMap((seed) => frames.map((frame) => frame(seed)));

const names = new Set(
  "html head meta title style body article header footer div span small h1 h3 p b i br strong em code bdi table thead tbody tfoot tr th td section svg g path circle rect text".split(
    " ",
  ),
);
const attributes = new Set(
  "lang dir charset http-equiv content name class style scope colspan viewBox role aria-label aria-hidden shape-rendering d cx cy r x y width height rx transform text-anchor".split(
    " ",
  ),
);

/** Everything that is not text, our tags and our attributes. */
function foreign(page: string): string[] {
  const body = page.replace(/^<!doctype html>/, "").replace(/<style>[^<]*<\/style>/, "");
  const wrong: string[] = [];
  for (const piece of body.split(/(<[^>]*>)/)) {
    if (!piece.startsWith("<")) {
      if (/[<>]/.test(piece)) wrong.push(piece);
      continue;
    }
    const tag = /^<\/?([a-z][a-z0-9]*)((?:\s+[A-Za-z:-]+="[^"<>]*")*)\s*\/?>$/.exec(piece);
    if (!tag || !names.has(tag[1]!)) wrong.push(piece);
    else for (const [, attribute] of tag[2]!.matchAll(/([A-Za-z:-]+)="/g)) if (!attributes.has(attribute!)) wrong.push(piece);
  }
  return wrong;
}

test("there are 300 of them", () => expect(nasty.length).toBe(300));

describe("alone", () => {
  test("every nasty string stays text", () => {
    for (const text of nasty) {
      const made = htmlText(html`<p class="${text}">${text}${user(text)}</p>`);
      expect(foreign(made), JSON.stringify(text)).toEqual([]);
      expect(htmlText(user(text))).not.toMatch(/[\u202a-\u202e\u2066-\u2069\u0000-\u0008]/);
    }
  });
  test("every nasty string as Markdown makes nothing but emphasis and code", () => {
    for (const text of nasty)
      for (const block of markdownBlocks(text)) {
        expect(foreign(htmlText(html`<p>${block.html}${block.rows}</p>`)), JSON.stringify(text)).toEqual([]);
        expect(htmlText(block.html)).not.toMatch(/<(?!\/?(?:strong|em|code)>)/);
      }
  });
  test("what is text comes back as it was", () => {
    const text = "Tom & \"Jo\" <3 'x'";
    expect(htmlText(html`${text}`)).toBe("Tom &amp; &quot;Jo&quot; &lt;3 &#39;x&#39;");
  });
  test("a number stays with its unit", () => {
    expect(htmlText(html`${"10 kΩ and 5 apples, 80 min, 3 m"}`)).toBe("10\u00a0kΩ and 5 apples, 80\u00a0min, 3 m");
  });
  test("lists are joined, null and false leave nothing, our own markup stays", () => {
    expect(htmlText(html`<p>${[html`<b>a</b>`, "b", null, false, 3]}</p>`)).toBe("<p><b>a</b>b3</p>");
  });
});

describe("in every place of every paper", () => {
  for (const tag of ["en", "xr"])
    test(`no foreign tag or attribute, ${tag}`, () => {
      for (let i = 0; i < nasty.length; i += 25) {
        const some = nasty.slice(i, i + 25);
        const at = (n: number) => some[n % some.length]!;
        const group = {
          ...inventedGroup(
            30,
            Array.from({ length: 30 }, (_, n) => at(n)),
          ),
          name: at(1),
          id: at(2).slice(0, 20),
        };
        const page = makePapers(everyPaper(group, withTexts(inventedLesson(), at), at), {
          language: languageFor(tag),
          paperSize: "A4",
          source: at(3),
        });
        expect(foreign(page.html)).toEqual([]);
        expect(page.html).not.toMatch(/src="|href=/);
      }
    });
});
