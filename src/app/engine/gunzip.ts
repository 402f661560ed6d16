// The browser's own unpacking of what the one file carries: gzip, written as base64.
//
// Does not know: what was packed, what to do in a browser that cannot.

/** The bytes of a base64 text. */
export function bytesOf(base64: string): Uint8Array<ArrayBuffer> {
  const signs = atob(base64.trim());
  const bytes = new Uint8Array(signs.length);
  for (let i = 0; i < signs.length; i += 1) bytes[i] = signs.charCodeAt(i);
  return bytes;
}

/** @returns the unpacked bytes, or null in a browser that has no gunzip. Rejects where the text is no packed data. */
export async function gunzip(base64: string): Promise<Uint8Array<ArrayBuffer> | null> {
  if (typeof DecompressionStream === "undefined") return null;
  const stream = new Blob([bytesOf(base64)]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}
