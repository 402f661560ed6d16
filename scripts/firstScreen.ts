// The screen that is painted before any script has run: the places, the bench line, and that the class is being opened.
//
// Its markup is that of the shell and of a place (src/app/shell, src/app/pieces/Page.tsx), so that nothing jumps when the script
// takes over. Its words are English, because which language a class speaks is not known yet.
// Does not know: classes, what the places show.

interface Words {
  readonly app: { readonly shell: Readonly<Record<string, string>> };
}
const places = ["today", "course", "cupboard", "order", "pupils", "print"];

/** @param catalogue text of locales/en.json. @returns the element that the page's script fills. */
export function firstScreen(catalogue: string): string {
  const { shell } = (JSON.parse(catalogue) as Words).app;
  const word = (key: string) => {
    const text = shell[key];
    if (text === undefined || /[<&{]/.test(text)) throw new Error(`the first screen needs plain words for shell.${key}`);
    return text;
  };
  const links = places.map((place) => `<a href="#/${place}">${word(place)}</a>`).join("");
  return [
    '<div id="page">',
    `<header class="head"><nav aria-label="${word("places")}">${links}</nav><div class="who"></div></header>`,
    `<main id="main"><div class="bench first"><div class="at"></div><div class="is"><h1>Benchday</h1><p>${word("opening")}</p></div></div></main>`,
    "</div>",
  ].join("");
}
