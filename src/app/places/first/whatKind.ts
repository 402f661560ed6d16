// What kind of file somebody opened, from its first bytes and its name, before anything reads it.
//
// A teacher with the wrong file should hear what it is ("a picture"), not what its 500th character is. Marks of the formats:
// PNG (ISO/IEC 15948), JPEG (ITU-T T.81), GIF89a, PDF (ISO 32000), ZIP (APPNOTE), gzip (RFC 1952), from memory; an office
// table or text is a ZIP, and the older kind begins with D0 CF 11 E0.
// Does not know: what a class file holds; that is for its reader to say.

/** Keys of the catalogue under `fileKind`. "class" means only that a reader of class files should look. */
export type FileKind =
  | "class"
  | "empty"
  | "tooLarge"
  | "picture"
  | "document"
  | "office"
  | "packed"
  | "kit"
  | "lesson"
  | "program"
  | "table"
  | "page"
  | "blank"
  | "unreadable";

/** Longest class file that its reader takes, in bytes: 8 million characters of which most take one byte. */
export const mostBytes = 16_000_000;

const marks: readonly [kind: FileKind, bytes: readonly number[]][] = [
  ["picture", [0x89, 0x50, 0x4e, 0x47]],
  ["picture", [0xff, 0xd8, 0xff]],
  ["picture", [0x47, 0x49, 0x46, 0x38]],
  ["picture", [0x42, 0x4d]],
  ["document", [0x25, 0x50, 0x44, 0x46]],
  ["office", [0xd0, 0xcf, 0x11, 0xe0]],
  ["packed", [0x50, 0x4b, 0x03, 0x04]],
  ["packed", [0x1f, 0x8b]],
];

/** @param size of the whole file in bytes. @param start its first bytes; a few thousand are enough. */
export function whatKind(name: string, size: number, start: Uint8Array): FileKind {
  if (size === 0) return "empty";
  const mark = marks.find(([, bytes]) => bytes.every((byte, at) => start[at] === byte));
  const ending = /\.([a-z0-9]+)$/i.exec(name)?.[1]?.toLowerCase() ?? "";
  if (mark?.[0] === "packed" && /^(xlsx|ods|docx|odt|pptx|odp)$/.test(ending)) return "office";
  if (mark) return mark[0];
  if (/^riff....webp/i.test(latin(start.subarray(0, 12)))) return "picture";
  if (size > mostBytes) return "tooLarge";
  const text = textOf(start);
  if (text === null) return "unreadable";
  const body = text.replace(/^\ufeff/, "").trimStart();
  if (body === "") return size > start.length ? "unreadable" : "blank";
  if (/^format:\s*benchday-kit\//m.test(body)) return "kit";
  if (/^format:\s*benchday-lesson\//m.test(body)) return "lesson";
  if (/"format"\s*:\s*"benchday-/.test(body)) return "class";
  if (/^<(!doctype|html|\?xml)/i.test(body)) return "page";
  if (/\bvoid\s+(setup|loop)\s*\(/.test(body)) return "program";
  if (/^[[{]/.test(body)) return "class";
  if (ending === "json") return "class";
  if (ending === "csv" || ending === "tsv" || isTable(body)) return "table";
  return "unreadable";
}

/** UTF-8 or UTF-16; null where it is neither, or holds signs that no text has. A sign cut in two at the end does not count. */
function textOf(start: Uint8Array): string | null {
  const [a, b] = [start[0], start[1]];
  const wide = a === 0xff && b === 0xfe ? "utf-16le" : a === 0xfe && b === 0xff ? "utf-16be" : null;
  try {
    const text = new TextDecoder(wide ?? "utf-8", { fatal: true }).decode(start, { stream: true });
    return text.includes("\0") ? null : text;
  } catch {
    return null;
  }
}

/** At least two lines with the same separator as often. */
function isTable(text: string): boolean {
  const lines = text
    .split(/\r\n|\r|\n/)
    .filter((line) => line !== "")
    .slice(0, 5);
  const counts = (mark: string) => lines.map((line) => line.split(mark).length - 1);
  return lines.length > 1 && [";", "\t", ","].some((mark) => counts(mark).every((n) => n > 0 && n === counts(mark)[0]));
}

function latin(bytes: Uint8Array): string {
  return [...bytes].map((byte) => String.fromCharCode(byte)).join("");
}
