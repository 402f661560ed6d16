// Checks the shape of a document against a schema and says where it differs.
//
// valibot judges; its findings are data, which we turn into problems with the line and column of the piece that is wrong: an
// unknown field points at its name and carries the nearest name that is allowed there, a missing field points at the mapping
// that lacks it. Text of a rule, as in `v.regex(/…/, "a-z 0-9 -")`, is passed on as what was expected.
// Does not know: any schema.
import * as v from "valibot";
import type { Document, DocumentProblem, Path } from "./document.ts";
import { shown } from "./document.ts";
import { near } from "./near.ts";
import type { Reading } from "./problem.ts";
import { sortProblems } from "./problem.ts";

type Issue = v.BaseIssue<unknown>;
type Schema = v.GenericSchema<unknown, unknown>;

/** The fields of valibot's schemas that hold other schemas. */
interface SchemaParts {
  readonly type: string;
  readonly entries?: Readonly<Record<string, Schema>>;
  readonly item?: Schema;
  readonly items?: readonly Schema[];
  readonly value?: Schema;
  readonly wrapped?: Schema;
  readonly options?: readonly unknown[];
  readonly pipe?: readonly Schema[];
  readonly getter?: (input: unknown) => Schema;
}

/**
 * @returns the data as the schema types them, or null and every difference, sorted by line. Unknown fields are errors where
 * the schema is strict.
 */
export function checkShape<T>(document: Document, schema: v.GenericSchema<unknown, T>): Reading<T, DocumentProblem> {
  const lists = listsForMappings(schema, document.data, []);
  if (lists.length > 0)
    return {
      value: null,
      problems: sortProblems(
        lists.map((path) => ({
          code: "document.wrongType" as const,
          place: document.place(path),
          path: path.join("."),
          expected: "mapping",
          found: "[…]",
        })),
      ),
    };
  const outcome = v.safeParse(schema, document.data, { abortEarly: false });
  if (outcome.success) return { value: outcome.output, problems: [] };
  const problems = outcome.issues
    .flatMap((issue) => unfold(issue as Issue, []))
    .map(({ issue, path }) => toProblem(issue, path, document, schema));
  return { value: null, problems: sortProblems(problems) };
}

/** valibot takes a list for a mapping with names 0, 1, 2; we do not. @returns the ways to such lists. */
function listsForMappings(schema: Schema, data: unknown, path: Path): Path[] {
  if (typeof data !== "object" || data === null) return [];
  const s = schema as unknown as SchemaParts;
  if (s.wrapped) return listsForMappings(s.wrapped, data, path);
  if (s.getter) return listsForMappings(s.getter(data), data, path);
  if (s.pipe && s.pipe[0] !== schema) return listsForMappings(s.pipe[0]!, data, path);
  if (s.options) {
    const found = s.options.flatMap((o) =>
      typeof o === "object" && o !== null ? [listsForMappings(o as Schema, data, path)] : [],
    );
    return found.some((paths) => paths.length === 0) ? [] : (found[0] ?? []);
  }
  if (Array.isArray(data)) {
    if (s.entries || s.type === "record") return [path];
    return data.flatMap((item, i) => {
      const next = s.item ?? s.items?.[i];
      return next ? listsForMappings(next, item, [...path, i]) : [];
    });
  }
  return Object.entries(data).flatMap(([name, value]) => {
    const next = s.entries?.[name] ?? s.value;
    return next ? listsForMappings(next, value, [...path, name]) : [];
  });
}

/** Where none of several shapes fits, the one that got furthest is what the author meant; its findings say most. */
function unfold(issue: Issue, before: Path): { issue: Issue; path: Path }[] {
  const path = [...before, ...(issue.path ?? []).map((step) => step.key as string | number)];
  const inner = issue.issues;
  if (!inner || inner.length === 0) return [{ issue, path }];
  const depth = Math.max(...inner.map((i) => i.path?.length ?? 0));
  if (depth === 0) return [{ issue, path }];
  return inner.filter((i) => (i.path?.length ?? 0) > 0).flatMap((i) => unfold(i, path));
}

function toProblem(issue: Issue, path: Path, document: Document, schema: Schema): DocumentProblem {
  const last = issue.path?.at(-1);
  const field = String(path.at(-1) ?? "");
  const written = path.join(".");
  if (last && (last as { origin?: string }).origin === "key") {
    if (issue.expected === "never") {
      const allowed = fieldsAt(schema, path.slice(0, -1), document.data);
      return { code: "document.unknownField", place: document.namePlace(path), path: written, field, near: near(field, allowed) };
    }
    if (issue.received === "undefined")
      return { code: "document.missingField", place: document.place(path.slice(0, -1)), path: written, field };
    return {
      code: "document.wrongValue",
      place: document.namePlace(path),
      path: written,
      expected: rule(issue),
      found: shown(field),
      near: null,
    };
  }
  const place = document.place(path);
  const value = valueAt(document.data, path);
  const found = shownValue(value);
  if (issue.kind === "schema" && !["picklist", "literal", "enum", "variant"].includes(issue.type))
    return { code: "document.wrongType", place, path: written, expected: rule(issue), found };
  const words = [...(issue.expected ?? "").matchAll(/"([^"]*)"/g)].map((m) => m[1]!);
  return {
    code: "document.wrongValue",
    place,
    path: written,
    expected: rule(issue),
    found,
    near: typeof value === "string" ? near(value, words) : null,
  };
}

/** What was expected, in the notation of the files: a rule's own text, or the type, bound or list of words. */
function rule(issue: Issue): string {
  if (!issue.message.startsWith("Invalid ")) return issue.message;
  const expected = issue.expected ?? "";
  return expected
    .replace(/^\((.*)\)$/, "$1")
    .replaceAll(" | ", ", ")
    .replaceAll('"', "")
    .replaceAll("Object", "mapping")
    .replaceAll("Array", "list")
    .replaceAll("string", "text");
}

function shownValue(value: unknown): string {
  if (Array.isArray(value)) return "[…]";
  if (typeof value === "object" && value !== null) return "{…}";
  return shown(String(value));
}

function valueAt(data: unknown, path: Path): unknown {
  let here = data;
  for (const step of path) {
    if (typeof here !== "object" || here === null || !Object.hasOwn(here, step)) return undefined;
    here = (here as Record<string | number, unknown>)[step];
  }
  return here;
}

/** Names of the fields that the schema allows in the mapping at `path`. */
function fieldsAt(schema: Schema, path: Path, data: unknown): string[] {
  const s = schema as unknown as SchemaParts;
  if (s.pipe)
    return s.pipe
      .flatMap((part) => (part === schema || !("type" in part) ? [] : fieldsAt(part, path, data)))
      .concat(ownFields(s, path, data));
  return ownFields(s, path, data);
}

function ownFields(s: SchemaParts, path: Path, data: unknown): string[] {
  if (s.wrapped) return fieldsAt(s.wrapped, path, data);
  if (s.getter) return fieldsAt(s.getter(data), path, data);
  if (s.options)
    return s.options.flatMap((option) =>
      typeof option === "object" && option !== null ? fieldsAt(option as Schema, path, data) : [],
    );
  const [step, ...rest] = path;
  if (step === undefined) return Object.keys(s.entries ?? {});
  const next = s.entries?.[String(step)] ?? s.item ?? s.items?.[Number(step)] ?? s.value;
  return next ? fieldsAt(next, rest, data) : [];
}
