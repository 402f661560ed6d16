// The versions of the lesson's format, and how an old one becomes the present one.
//
// A file names its version in its first field, `format: benchday-lesson/1`. Every version ever released stays readable: when a
// second comes, it gets an entry with the step from the one before, and test/lessons/ keeps a sample of each for ever.
// Does not know: what the fields mean.

export interface FormatVersion {
  readonly version: number;
  /** Turns the data of the version before into this one; null for the first. Paths of unchanged fields stay as they were. */
  readonly fromBefore: ((data: unknown) => unknown) | null;
}

/** All versions, oldest first. */
export const formatVersions: readonly FormatVersion[] = [{ version: 1, fromBefore: null }];

/** What a file of today writes. */
export const currentFormat = "benchday-lesson/1";

export type FormatOutcome =
  | { readonly status: "known"; readonly version: number }
  | { readonly status: "newer"; readonly version: number }
  | { readonly status: "unknown" };

/** @returns which version a file's `format` names. */
export function readFormat(format: unknown): FormatOutcome {
  const match = typeof format === "string" ? /^benchday-lesson\/([1-9]\d{0,3})$/.exec(format) : null;
  if (!match) return { status: "unknown" };
  const version = Number(match[1]);
  return formatVersions.some((f) => f.version === version) ? { status: "known", version } : { status: "newer", version };
}

/** @returns the data in the present version. */
export function migrate(data: unknown, version: number): unknown {
  return formatVersions.filter((f) => f.version > version).reduce((before, f) => f.fromBefore?.(before) ?? before, data);
}
