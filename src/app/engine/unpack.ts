// Unpacks what the one file carries: gzip, written as base64.
//
// The browser's own gunzip is faster; older browsers have none, so a small one comes along.
// Does not know: what was packed.
import { gunzipSync } from "fflate";

/** @returns the bytes. Rejects where the text is no packed data. */
export async function unpack(base64: string): Promise<Uint8Array<ArrayBuffer>> {
  const signs = atob(base64.trim());
  const packed = new Uint8Array(signs.length);
  for (let i = 0; i < signs.length; i += 1) packed[i] = signs.charCodeAt(i);
  if (typeof DecompressionStream === "undefined") return new Uint8Array(gunzipSync(packed));
  const stream = new Blob([packed]).stream().pipeThrough(new DecompressionStream("gzip"));
  return new Uint8Array(await new Response(stream).arrayBuffer());
}

/** @returns the text that was packed as UTF-8. */
export async function unpackText(base64: string): Promise<string> {
  return new TextDecoder().decode(await unpack(base64));
}
