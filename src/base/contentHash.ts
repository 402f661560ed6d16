// A short name for content: the same data gives the same hash on every machine.
//
// Used as the key of remembered results and in the title block of papers ("computed from"). SHA-256 over JSON with sorted
// keys, so that the order in which an object was filled does not matter.
// Does not know: what the data means.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";

/** @param data plain data; Maps and Sets count by content, undefined members are left out. @returns 64 hex digits. */
export function contentHash(data: unknown): string {
  return bytesToHex(sha256(utf8ToBytes(canonical(data))));
}

function canonical(data: unknown): string {
  if (data instanceof Map) return `M${canonical([...data.entries()].sort(([a], [b]) => (String(a) < String(b) ? -1 : 1)))}`;
  if (data instanceof Set) return `S${canonical([...data].sort())}`;
  if (Array.isArray(data)) return `[${data.map((d) => canonical(d ?? null)).join(",")}]`;
  if (data !== null && typeof data === "object") {
    const keys = Object.keys(data).sort();
    const known = data as Record<string, unknown>;
    return `{${keys
      .filter((k) => known[k] !== undefined)
      .map((k) => `${JSON.stringify(k)}:${canonical(known[k])}`)
      .join(",")}}`;
  }
  // JSON turns these into null, which would make different data look the same.
  if (typeof data === "number" && !Number.isFinite(data)) return String(data);
  return JSON.stringify(data) ?? "null";
}
