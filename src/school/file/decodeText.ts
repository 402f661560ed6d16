// From the bytes of a file to its text: UTF-8, UTF-16 or the old Western code page, found out from the bytes.
//
// Spreadsheets write UTF-8 with a mark, UTF-16 with a mark, or the code page of the machine without saying so. Text in that
// code page is hardly ever well-formed UTF-8, so UTF-8 is tried first and strictly. The code page is decoded by our own table,
// because Node 20's decoder for it leaves 0x80 to 0x9F as control characters.
// Does not know: CSV, what the text is about.

export type Encoding = "utf-8" | "utf-16le" | "utf-16be" | "windows-1252";

/** Bytes 0x80 to 0x9F; the others are Latin-1. Source: WHATWG Encoding Standard, index windows-1252. */
const upper =
  "\u20ac\u0081\u201a\u0192\u201e\u2026\u2020\u2021\u02c6\u2030\u0160\u2039\u0152\u008d\u017d\u008f" +
  "\u0090\u2018\u2019\u201c\u201d\u2022\u2013\u2014\u02dc\u2122\u0161\u203a\u0153\u009d\u017e\u0178";

/**
 * @param content the bytes of a file, or its text if somebody decoded it already (pasted text).
 * @returns the text without its byte order mark, and how it was encoded (null for what came as text). Never fails: bytes that
 * are no UTF-8 and carry no mark are read as the code page, in which every byte is a character.
 */
export function decodeText(content: Uint8Array | string): { text: string; encoding: Encoding | null } {
  if (typeof content === "string") return { text: content.replace(/^\ufeff/, ""), encoding: null };
  const [a, b] = content;
  if (a === 0xff && b === 0xfe) return { text: decodeUtf16(content, true), encoding: "utf-16le" };
  if (a === 0xfe && b === 0xff) return { text: decodeUtf16(content, false), encoding: "utf-16be" };
  try {
    return { text: new TextDecoder("utf-8", { fatal: true }).decode(content), encoding: "utf-8" };
  } catch {
    return { text: decodeWindows1252(content), encoding: "windows-1252" };
  }
}

/** After the mark; an odd last byte is cut off. */
function decodeUtf16(bytes: Uint8Array, lowFirst: boolean): string {
  const parts: string[] = [];
  for (let i = 2; i + 1 < bytes.length; i += 2) {
    const first = bytes[i] ?? 0;
    const second = bytes[i + 1] ?? 0;
    parts.push(String.fromCharCode(lowFirst ? first + 256 * second : 256 * first + second));
  }
  return parts.join("");
}

function decodeWindows1252(bytes: Uint8Array): string {
  const parts: string[] = [];
  for (const byte of bytes) parts.push(byte >= 0x80 && byte <= 0x9f ? (upper[byte - 0x80] ?? "") : String.fromCharCode(byte));
  return parts.join("");
}
