// A file that a person wrote or a program saved, read into plain data with the place of every piece of it.
//
// Two notations, one result: lessons and kits are YAML, class files are JSON. Only the part of YAML that JSON has too is
// taken (readYamlTree.ts): no references, no tags, nothing that one line could blow up into thousands. Names that would reach
// into the language's own objects are refused, text is brought into one spelling (NFC), and characters that make text read
// differently from what it says are left out. Size, depth and number of pieces are limited. Nothing here throws.
// Does not know: what the data mean (checkShape.ts checks their shape).
import type { Place, ProblemBase, Reading } from "./problem.ts";
import { sortProblems } from "./problem.ts";

/** Way to a piece of a document: names in mappings, positions in lists. */
export type Path = readonly (string | number)[];

export interface Document {
  readonly file: string;
  /** Plain data: null, true and false, numbers, text, arrays, and objects without a prototype. */
  readonly data: unknown;
  /** Where the value at `path` begins; where there is no such value, the nearest thing around it. */
  place(path: Path): Place;
  /** Where the name of the value at `path` stands in its mapping; as `place` for the items of a list. */
  namePlace(path: Path): Place;
}

/** What a document may hold at most. */
export interface DocumentLimits {
  readonly characters: number;
  readonly depth: number;
  readonly nodes: number;
  /** Characters of a single text. */
  readonly text: number;
}

/** Limits against files that would stop the machine. A lesson has a hundred lines; a class file grows with the years. */
export const documentLimits: Readonly<Record<Notation, DocumentLimits>> = {
  yaml: { characters: 1_000_000, depth: 32, nodes: 50_000, text: 10_000 },
  json: { characters: 8_000_000, depth: 32, nodes: 1_000_000, text: 10_000 },
};

export type Notation = "yaml" | "json";

/** What reading and checking a document can find. `path` is the way to the piece, names joined by points. */
export type DocumentProblem =
  | ProblemBase<"document.tooLarge", { readonly place: Place; readonly most: number; readonly found: number }>
  | ProblemBase<"document.tooDeep", { readonly place: Place; readonly most: number }>
  | ProblemBase<"document.tooMany", { readonly place: Place; readonly most: number }>
  | ProblemBase<"document.longText", { readonly place: Place; readonly most: number; readonly found: number }>
  | ProblemBase<"document.empty", { readonly place: Place }>
  /** The text ends before the document does, as after a power cut. */
  | ProblemBase<"document.cutOff", { readonly place: Place; readonly expected: string }>
  /** `expected` may be empty where nothing in particular was expected. */
  | ProblemBase<"document.unexpected", { readonly place: Place; readonly expected: string; readonly found: string }>
  /** Something stands after the end of the document. */
  | ProblemBase<"document.trailing", { readonly place: Place; readonly found: string }>
  | ProblemBase<"document.tab", { readonly place: Place }>
  | ProblemBase<"document.indent", { readonly place: Place; readonly found: string }>
  /** A colon with a blank inside a text that stands without quotes. */
  | ProblemBase<"document.colon", { readonly place: Place; readonly found: string }>
  | ProblemBase<"document.badEscape", { readonly place: Place; readonly found: string }>
  | ProblemBase<"document.badNumber", { readonly place: Place; readonly found: string }>
  /** Anchors, references, tags, merge keys, directives: YAML that we do not take. */
  | ProblemBase<"document.refused", { readonly place: Place; readonly what: RefusedFeature; readonly found: string }>
  | ProblemBase<"document.badName", { readonly place: Place; readonly found: string }>
  | ProblemBase<"document.twice", { readonly place: Place; readonly name: string; readonly firstLine: number }>
  | ProblemBase<"document.unknownField", FieldData & { readonly near: string | null }>
  | ProblemBase<"document.missingField", FieldData>
  | ProblemBase<
      "document.wrongType",
      { readonly place: Place; readonly path: string; readonly expected: string; readonly found: string }
    >
  | ProblemBase<
      "document.wrongValue",
      {
        readonly place: Place;
        readonly path: string;
        readonly expected: string;
        readonly found: string;
        readonly near: string | null;
      }
    >;

interface FieldData {
  readonly place: Place;
  readonly path: string;
  readonly field: string;
}

export type RefusedFeature = "anchor" | "reference" | "tag" | "merge" | "directive" | "several documents";

/** A piece of a document as the readers of the two notations hand it over. Offsets count characters from the start. */
export type Tree =
  | { readonly at: number; readonly kind: "value"; readonly value: null | boolean | number | string }
  | { readonly at: number; readonly kind: "list"; readonly items: readonly Tree[] }
  | {
      readonly at: number;
      readonly kind: "mapping";
      readonly entries: readonly { readonly at: number; readonly name: string; readonly tree: Tree }[];
    };

/** What a reader found wrong: a problem without its place, at an offset. */
export type Complaint = { readonly at: number } & (DocumentProblem extends infer P
  ? P extends DocumentProblem
    ? Omit<P, "place" | "severity">
    : never
  : never);

/** Hands over a tree, or null if the complaints leave none. */
export interface TreeOutcome {
  readonly tree: Tree | null;
  readonly complaints: readonly Complaint[];
}

/** Names that mean something to the objects of the language. */
const forbiddenNames: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype"]);
/** Bidirectional overrides and isolates (Unicode Standard Annex 9): they can make a name look like another. */
const overrides = /[\u202a-\u202e\u2066-\u2069]/g;
const loneSurrogates = /[\ud800-\udfff]/gu;
/** A file full of slips is told the first of them. */
const mostProblems = 100;

/** Reads the text of one notation, within the limits. */
export type TreeReader = (text: string, limits: DocumentLimits) => TreeOutcome;

/**
 * Reads a document of either notation; `readJson` and `readYaml` are this with their reader. They are apart because a page reads
 * class files while somebody waits, and YAML's reader is large.
 *
 * @param file name that problems carry.
 * @param text a byte order mark and Windows line ends are tolerated.
 * @returns the document, or null and what is wrong, sorted by line. Columns count UTF-16 units from 1.
 */
export function readTree(
  file: string,
  text: string,
  reader: TreeReader,
  limits: DocumentLimits,
): Reading<Document, DocumentProblem> {
  const body = text.startsWith("\ufeff") ? text.slice(1) : text;
  if (body.length > limits.characters) {
    const place = { file, line: 1, column: 1 };
    const problem = { code: "document.tooLarge", place, most: limits.characters, found: body.length } as const;
    return { value: null, problems: [problem] };
  }
  const placeAt = placeFinder(file, body);
  const { tree, complaints } = reader(body, limits);
  const problems = onceAPlace(complaints.map(({ at, ...rest }) => ({ ...rest, place: placeAt(at) }) as DocumentProblem));
  const data = tree === null ? null : toData(tree, placeAt, limits, problems);
  if (tree === null || problems.length > 0) return { value: null, problems: sortProblems(problems).slice(0, mostProblems) };
  const entryOf = indexOfNames();
  return {
    value: {
      file,
      data,
      place: (path) => placeAt(find(tree, path, entryOf).value),
      namePlace: (path) => placeAt(find(tree, path, entryOf).name),
    },
    problems: [],
  };
}

/** @returns text in one spelling, without what only changes its look. */
export function plainText(text: string): string {
  return text.replace(overrides, "").replace(loneSurrogates, "\ufffd").normalize("NFC");
}

/** One slip often has several consequences at the same place; the first says what is wrong. */
function onceAPlace(problems: readonly DocumentProblem[]): DocumentProblem[] {
  const seen = new Set<string>();
  return problems.filter(({ place }) => {
    const key = `${place.line}:${place.column}`;
    return seen.has(key) ? false : Boolean(seen.add(key));
  });
}

/** Turns a tree into plain data. Depth is limited by the readers, so that recursion is safe. */
function toData(tree: Tree, placeAt: (at: number) => Place, limits: DocumentLimits, problems: DocumentProblem[]): unknown {
  if (tree.kind === "list") return tree.items.map((item) => toData(item, placeAt, limits, problems));
  if (tree.kind === "value") {
    if (typeof tree.value !== "string") return tree.value;
    if (tree.value.length > limits.text)
      problems.push({ code: "document.longText", place: placeAt(tree.at), most: limits.text, found: tree.value.length });
    return plainText(tree.value);
  }
  const data: Record<string, unknown> = Object.create(null);
  const seen = new Map<string, number>();
  for (const entry of tree.entries) {
    const name = plainText(entry.name);
    if (forbiddenNames.has(name) || name.length > 200) {
      problems.push({ code: "document.badName", place: placeAt(entry.at), found: shown(name) });
      continue;
    }
    const first = seen.get(name);
    if (first !== undefined) {
      problems.push({ code: "document.twice", place: placeAt(entry.at), name, firstLine: placeAt(first).line });
      continue;
    }
    seen.set(name, entry.at);
    data[name] = toData(entry.tree, placeAt, limits, problems);
  }
  return data;
}

/** The entries of mappings by name, made when first asked for: a problem a line must not cost a walk over the file. */
function indexOfNames() {
  const indexes = new WeakMap<Tree, ReadonlyMap<string, { at: number; tree: Tree }>>();
  return (mapping: Tree & { readonly kind: "mapping" }, name: string | number) => {
    let index = indexes.get(mapping);
    if (!index) {
      index = new Map(mapping.entries.map((entry) => [plainText(entry.name), entry]));
      indexes.set(mapping, index);
    }
    return index.get(String(name));
  };
}

/** Follows a path as far as it goes. */
function find(tree: Tree, path: Path, entryOf: ReturnType<typeof indexOfNames>): { value: number; name: number } {
  let at = { value: tree.at, name: tree.at };
  let here = tree;
  for (const step of path) {
    if (here.kind === "list") {
      const next = here.items[Number(step)];
      if (next === undefined) break;
      at = { value: next.at, name: next.at };
      here = next;
    } else if (here.kind === "mapping") {
      const entry = entryOf(here, step);
      if (entry === undefined) break;
      at = { value: entry.tree.at, name: entry.at };
      here = entry.tree;
    } else break;
  }
  return at;
}

/** @returns a function from offsets to places, by bisection over the starts of lines. */
function placeFinder(file: string, text: string): (at: number) => Place {
  const starts = [0];
  for (let at = text.indexOf("\n"); at !== -1; at = text.indexOf("\n", at + 1)) starts.push(at + 1);
  return (at) => {
    let low = 0;
    let high = starts.length - 1;
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (starts[middle]! <= at) low = middle;
      else high = middle - 1;
    }
    return { file, line: low + 1, column: at - starts[low]! + 1 };
  };
}

/** A piece of text as a problem shows it: one line, not too long, or null where the text has ended. */
export function shown(text: string): string {
  const line = plainText(text.split(/[\r\n]/, 1)[0] ?? "").trim();
  return line.length > 40 ? `${line.slice(0, 39)}…` : line;
}
