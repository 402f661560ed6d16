// Text as the chip holds it: one character for each byte of UTF-8.
//
// A program's texts and what the board sends are bytes; a degree sign is two of them, and strlen, sizeof and the 64-byte
// buffer count bytes. Inside this room such text is a string whose characters are 0..255.
// Does not know: who sends or reads it.

/** @returns the bytes of the text as characters 0..255. */
export function toBytes(text: string): string {
  let out = "";
  for (const character of text) {
    const c = character.codePointAt(0)!;
    if (c < 0x80) out += character;
    else if (c < 0x800) out += String.fromCharCode(0xc0 | (c >> 6), 0x80 | (c & 63));
    else if (c < 0x10000) out += String.fromCharCode(0xe0 | (c >> 12), 0x80 | ((c >> 6) & 63), 0x80 | (c & 63));
    else out += String.fromCharCode(0xf0 | (c >> 18), 0x80 | ((c >> 12) & 63), 0x80 | ((c >> 6) & 63), 0x80 | (c & 63));
  }
  return out;
}

/**
 * Reads bytes as text. Bytes that are no UTF-8 become U+FFFD, one each.
 *
 * @param more true if more bytes may follow: a character that is cut off at the end is then left over as `rest`.
 */
export function fromBytes(bytes: string, more = false): { text: string; rest: string } {
  let text = "";
  let i = 0;
  while (i < bytes.length) {
    const first = bytes.charCodeAt(i);
    const length =
      first < 0x80
        ? 1
        : first >= 0xc2 && first < 0xe0
          ? 2
          : first >= 0xe0 && first < 0xf0
            ? 3
            : first >= 0xf0 && first < 0xf5
              ? 4
              : 0;
    let c = length === 1 ? first : first & (0x7f >> length);
    let k = 1;
    while (k < length && i + k < bytes.length && (bytes.charCodeAt(i + k) & 0xc0) === 0x80) {
      c = (c << 6) | (bytes.charCodeAt(i + k) & 63);
      k += 1;
    }
    if (k < length && i + k >= bytes.length && more) return { text, rest: bytes.slice(i) };
    const least = [0, 0, 0x80, 0x800, 0x10000][length]!;
    const good = length > 0 && k === length && c >= least && c <= 0x10ffff && !(c >= 0xd800 && c < 0xe000);
    text += good ? String.fromCodePoint(c) : "\ufffd";
    i += good ? length : 1;
  }
  return { text, rest: "" };
}
