// Markup that cannot be forged: everything put into a template is escaped unless it was made here.
//
// A paper shows names, notes and lesson texts that strangers wrote. `Html` can only come from the literal parts of a template,
// so no text of theirs becomes a tag, whatever it holds. Text of a person goes through `user`, which also keeps its direction
// to itself (Unicode Standard Annex 9: an isolate) and drops the signs that would turn the rest of a line round.
// Does not know: papers.

const made: unique symbol = Symbol("html");

/** Markup that is safe to show. */
export interface Html {
  readonly [made]: string;
}

export type Content = string | number | Html | readonly Content[] | null | false;

/** html`<p>${text}</p>`: text is escaped, `Html` stays, lists are joined, null and false leave nothing. */
export function html(literals: TemplateStringsArray, ...values: readonly Content[]): Html {
  return { [made]: literals.map((part, i) => part + (i < values.length ? markup(values[i] ?? null) : "")).join("") };
}

/** A person's own text: escaped, with its own direction. */
export function user(text: string): Html {
  return html`<bdi>${text.replace(turning, "")}</bdi>`;
}

/** Markup that another maker escaped; only for markdownBlocks.ts, whose maker is micromark with raw markup switched off. */
export function trusted(markup: string): Html {
  return { [made]: markup };
}

/** @returns the markup as text, for writing it to a file. */
export function htmlText(content: Html): string {
  return content[made];
}

/** Embeddings, overrides and isolates; the two marks (200E, 200F) stay, names in Arabic and Hebrew use them. */
const turning = /[\u202a-\u202e\u2066-\u2069]/g;
/** Signs that XML and HTML do not allow, and halves of a pair. */
const unshowable = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\ufffe\uffff]/g;
const loneHalves = /[\ud800-\udfff]/gu;
/** A number and its unit stay on one line (SI brochure: a space that does not break). */
const numberAndUnit = /(\d) (?=(?:[GMkmµnp]?(?:Ω|F|H|V|A|W|s|Hz|lx|Ah)|°C|cm|mm|g|%|min)(?![\p{L}\p{N}]))/gu;

function markup(value: Content): string {
  if (value === null || value === false) return "";
  if (typeof value === "string" || typeof value === "number") return escaped(String(value));
  if (Array.isArray(value)) return value.map(markup).join("");
  return (value as Html)[made];
}

const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "'": "&#39;" };

function escaped(text: string): string {
  return text
    .replace(unshowable, "")
    .replace(loneHalves, "\ufffd")
    .replace(numberAndUnit, "$1\u00a0")
    .replace(/[&<>"']/g, (sign) => entities[sign] ?? sign);
}
