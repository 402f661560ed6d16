// Unpacks what the one file carries, also in older browsers that have no gunzip: a small one comes along.
//
// Does not know: what was packed.
import { gunzipSync } from "fflate";
import { bytesOf, gunzip } from "./gunzip.ts";

/** @returns the bytes. Rejects where the text is no packed data. */
export async function unpack(base64: string): Promise<Uint8Array<ArrayBuffer>> {
  return (await gunzip(base64)) ?? new Uint8Array(gunzipSync(bytesOf(base64)));
}

/** @returns the text that was packed as UTF-8. */
export async function unpackText(base64: string): Promise<string> {
  return new TextDecoder().decode(await unpack(base64));
}
