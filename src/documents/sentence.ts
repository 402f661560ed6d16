// A sentence of the catalogue with markup in it, such as a person's name in its own direction.
//
// The text is filled with signs that no text holds (private use area), escaped as a whole, and the markup takes their places:
// a translator moves the placeholder where the language wants it, and nobody glues sentences from pieces.
// Does not know: papers.
import { type Data, type Language, say, type TextKey } from "../language/index.ts";
import { type Html, html } from "./html.ts";

/**
 * @param data values that are shown as text.
 * @param marked values that are shown as markup, by the name of their placeholder.
 */
export function sentence(language: Language, key: TextKey, data: Data, marked: Readonly<Record<string, Html>>): Html {
  const names = Object.keys(marked);
  const held = Object.fromEntries(names.map((name, i) => [name, String.fromCharCode(0xe000 + i)]));
  const clean = Object.fromEntries(
    Object.entries(data).map(([name, value]) => [
      name,
      typeof value === "string" ? value.replace(/[\ue000-\ue0ff]/g, "") : value,
    ]),
  );
  const pieces = say(language, key, { ...clean, ...held }).split(/([\ue000-\ue0ff])/);
  return html`${pieces.map((piece) => {
    const index = /^[\ue000-\ue0ff]$/.test(piece) ? piece.charCodeAt(0) - 0xe000 : -1;
    return marked[names[index] ?? ""] ?? piece;
  })}`;
}
