// The screen that is painted before any script has run: the places, the bench line, and that the class is being opened.
//
// Its markup is that of the shell and of a place (src/app/shell, src/app/pieces/Page.tsx), so that nothing jumps when the script
// takes over. Its words are English, because which language a class speaks is not known yet.
// Does not know: classes, what the places show.

interface Words {
  readonly app: Readonly<Record<"shell" | "engine", Readonly<Record<string, string>>>>;
}
const places = ["today", "course", "cupboard", "order", "pupils", "print"];

/** @param catalogue text of locales/en.json. @returns the element that the page's script fills. */
export function firstScreen(catalogue: string): string {
  const { app } = JSON.parse(catalogue) as Words;
  const word = (key: string, family: keyof Words["app"] = "shell") => {
    const text = app[family][key];
    if (text === undefined || /[<&{]/.test(text)) throw new Error(`the first screen needs plain words for ${family}.${key}`);
    return text;
  };
  const links = places.map((place) => `<a href="#/${place}">${word(place)}</a>`).join("");
  return [
    '<div id="page">',
    `<header class="head"><nav aria-label="${word("places")}">${links}</nav><div class="who"></div></header>`,
    `<main id="main"><div class="bench first"><div class="at"></div><div class="is"><h1>Benchday</h1><p>${word("opening")}</p><noscript><p>${word("noScript", "engine")}</p></noscript></div></div></main>`,
    "</div>",
  ].join("");
}
