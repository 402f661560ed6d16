// Which version of a format a document has, and the way from an old one to the newest.
//
// A version that was ever released is read for ever: each migration takes plain data one version further. A newer version is
// refused whole, because half of it would be lost at the next save.
// Does not know: what the data mean.
import { type Document, near, type Reading } from "../../base/index.ts";
import type { FileProblem } from "./fileProblem.ts";

/** Takes data of one version to the next. It must not change its input. */
export type Migration = (data: Readonly<Record<string, unknown>>) => Record<string, unknown>;

export interface Format {
  /** "benchday-class" */
  readonly name: string;
  readonly newest: number;
  /** The migration at version n leads to n + 1. */
  readonly migrations: ReadonlyMap<number, Migration>;
}

/**
 * @returns the document with data of the newest version. Places of what a migration moved are those of the nearest thing that
 * stands in the file.
 */
export function bringToNewest(document: Document, format: Format): Reading<Document, FileProblem> {
  const expected = `${format.name}/${format.newest}`;
  const { data } = document;
  if (typeof data !== "object" || data === null || Array.isArray(data)) return refused(document, expected, typeof data);
  const fields = data as Readonly<Record<string, unknown>>;
  const found = fields.format;
  if (found === undefined) {
    const field = near("format", Object.keys(fields)) ?? "format";
    const place = field in fields ? document.namePlace([field]) : document.place([]);
    return { value: null, problems: [{ code: "document.missingField", place, path: "format", field: "format" }] };
  }
  const match = typeof found === "string" ? /^(.+)\/([1-9]\d{0,5})$/.exec(found) : null;
  if (match?.[1] !== format.name) return refused(document, expected, String(found));
  let version = Number(match[2]);
  if (version > format.newest) {
    const place = document.place(["format"]);
    return { value: null, problems: [{ code: "file.newerFormat", place, found: String(found), expected }] };
  }
  let migrated = fields;
  for (; version < format.newest; version += 1) {
    const migration = format.migrations.get(version);
    if (!migration) return refused(document, expected, String(found));
    migrated = { ...migration(migrated), format: `${format.name}/${version + 1}` };
  }
  return { value: { ...document, data: migrated }, problems: [] };
}

function refused(document: Document, expected: string, found: string): Reading<Document, FileProblem> {
  const place = document.place(["format"]);
  return { value: null, problems: [{ code: "file.otherFormat", place, found: found.slice(0, 60), expected }] };
}
