// Turns a code with its data into a sentence.
//
// Texts are ICU MessageFormat. Before a text sees a value, the value's name says how it is written (shownValue.ts): `amps` as
// "40 mA", `date` as "4 March 2027", `item` as "resistor, 220 Ω". A missing value becomes a dash, an unknown code is shown as
// it is: words never stop the work they speak about. Most texts only name their values; those are filled in without the reader
// of messages, which is slow to start, and the page's build has read the others already (scripts/oneFile.ts).
// Does not know: which texts there are, where a sentence is shown.
import { IntlMessageFormat } from "intl-messageformat";
import type { ProblemCode, ProblemText, Text, TextKey } from "./catalogue.ts";
import { formatNumber, type Language } from "./language.ts";
import { keyShown, stretched } from "./pseudoText.ts";
import { shownValue } from "./shownValue.ts";

/** What a text may be given. Lists become "a, b and c". */
export type Data = Readonly<Record<string, unknown>>;

/** @returns the sentence or word for a key such as "verdict.ready" or `hazard.${hazard.code}`. */
export function say(language: Language, key: TextKey, data: Data = {}): string {
  return sayUnchecked(language, key, data);
}

/** As `say`, for codes that come from data and that the compiler cannot know; an unknown one is shown as it is. */
export function sayUnchecked(language: Language, key: string, data: Data = {}): string {
  const text = language.text(key);
  if (text === null) return unknownText(language, key, data);
  return filled(language, key, hasTry(text) ? text.says : text, data);
}

/** @returns what is wrong, and what to do about it. Figures come from the problem itself. */
export function sayProblem(language: Language, problem: { readonly code: ProblemCode | (string & {}) }): ProblemText {
  const data = problem as unknown as Data;
  const text = language.text(problem.code);
  if (text === null || !hasTry(text)) return { says: unknownText(language, problem.code, data), try: "" };
  return {
    says: filled(language, problem.code, text.says, data),
    try: filled(language, language.pseudo === "keys" ? `${problem.code}, try` : problem.code, text.try, data),
  };
}

/** A text as it was written, or as the page's build has read it. */
type Message = string | readonly MessagePart[];

/** A text that was read is a list. */
function hasTry(text: Text): text is ProblemText {
  return typeof text === "object" && "says" in text;
}

interface Compiled {
  readonly write: (values: Readonly<Record<string, string | number>>) => string;
  /** Values that the text counts with or chooses by, with the choices. */
  readonly choosing: ReadonlyMap<string, ReadonlySet<string>>;
  readonly names: readonly string[];
}

function filled(language: Language, key: string, text: Message, data: Data): string {
  const { write, choosing, names } = compiled(language, text);
  const values: Record<string, string | number> = {};
  for (const name of names) {
    const value = valueNamed(data, name);
    const choices = choosing.get(name);
    const chosen = choices ? chosenBy(value) : null;
    // What no choice is named for is shown, so that {near, select, none {…} other {… {near}?}} can speak of it.
    values[name] =
      chosen !== null && (typeof chosen === "number" || choices?.has(chosen)) ? chosen : shownValue(language, name, value, data);
  }
  if (language.pseudo === "keys") return keyShown(key, Object.values(values));
  const words = write(values);
  return language.pseudo === "stretched" ? stretched(words) : words;
}

/** The value of a name; `values0` is the first of the list `values`, for codes that carry bare numbers. */
function valueNamed(data: Data, name: string): unknown {
  if (name in data) return data[name];
  const nth = /^([a-z]+)(\d)$/.exec(name);
  const list = nth ? data[nth[1] ?? ""] : undefined;
  return Array.isArray(list) ? list[Number(nth?.[2])] : undefined;
}

/** A plural takes the number, a choice a word; null and undefined choose "none". */
function chosenBy(value: unknown): string | number {
  if (typeof value === "number") return value;
  // A choice is named by a word without signs: "usb-cable" is chosen by usb_cable.
  if (typeof value === "string") return signs[value] ?? value.replace(/[^\p{L}\p{N}]/gu, "_");
  if (Array.isArray(value)) return value.length;
  return value === null || value === undefined ? "none" : String(value);
}

const signs: Readonly<Record<string, string>> = { "+": "plus", "-": "minus" };

function compiled(language: Language, text: Message): Compiled {
  const before = language.kept.get(text) as Compiled | undefined;
  if (before) return before;
  const made = onlyNames(text) ?? chooses(language, text);
  language.kept.set(text, made);
  return made;
}

/** Texts without choices, quotes and numbers of their own, so that a brace can be nothing but a value's. */
const plain = /^[^{}'#]*(?:\{\w+\}[^{}'#]*)*$/;

/** @returns null where the text does more than name values. */
function onlyNames(text: Message): Compiled | null {
  if (typeof text !== "string" || !plain.test(text)) return null;
  // Words and names by turns.
  const parts = text.split(/\{(\w+)\}/);
  return {
    write: (values) => parts.map((part, i) => (i % 2 === 0 ? part : String(values[part]))).join(""),
    choosing: new Map(),
    names: [...new Set(parts.filter((_, i) => i % 2 === 1))],
  };
}

/** True where the page's build should read the text, so that the page needs no reader. */
export const needsReading = (text: string): boolean => !plain.test(text);

/** @returns what a text says and asks for, as plain data; a fault in it is thrown. */
export function readMessage(text: string): readonly MessagePart[] {
  return new IntlMessageFormat(text, "en", undefined, { ignoreTag: true }).getAst() as readonly MessagePart[];
}

// Else it asks the browser for the list of all languages, which takes longer than all else at the start; ours name themselves.
IntlMessageFormat.resolveLocale = (tags) => new Intl.Locale(typeof tags === "string" ? tags : (tags[0] ?? "en"));

function chooses(language: Language, text: Message): Compiled {
  const format = new IntlMessageFormat(text as string, language.intl, undefined, { ignoreTag: true });
  return { write: (values) => String(format.format(values)), ...askedFor(format.getAst() as readonly MessagePart[]) };
}

/** The parts of a parsed message that matter here: 1 argument, 2 number, 5 select, 6 plural (icu-messageformat-parser). */
export interface MessagePart {
  readonly type: number;
  readonly value?: string;
  readonly options?: Readonly<Record<string, { readonly value: readonly MessagePart[] }>>;
}

/** The names of the values that a text asks for, and those of them that it chooses by or counts with. */
function askedFor(message: readonly MessagePart[]): Omit<Compiled, "write"> {
  const names = new Set<string>();
  const choosing = new Map<string, Set<string>>();
  const walk = (parts: readonly MessagePart[]): void => {
    for (const part of parts) {
      if (part.type === 0 || part.type === 7 || part.value === undefined) continue;
      names.add(part.value);
      if (part.type === 1) continue;
      const choices = choosing.get(part.value) ?? new Set();
      choosing.set(part.value, choices);
      for (const [choice, option] of Object.entries(part.options ?? {})) {
        choices.add(choice);
        walk(option.value);
      }
    }
  };
  walk(message);
  return { names: [...names], choosing };
}

/** The names of the values that a text asks for. */
export function placeholders(text: string): readonly string[] {
  return askedFor(readMessage(text)).names;
}

/** A code that nobody wrote a text for, with its data: honest, and enough to find it. */
function unknownText(language: Language, key: string, data: Data): string {
  const shown = Object.entries(data)
    .filter(([name, value]) => !["code", "severity", "place"].includes(name) && typeof value !== "object")
    .map(([name, value]) => `${name} ${typeof value === "number" ? formatNumber(language, value) : String(value)}`);
  return shown.length === 0 ? key : `${key} (${shown.join(", ")})`;
}
