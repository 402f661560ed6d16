// Plain data as bytes and back, exactly: also Map, Set, undefined, numbers that JSON has no word for, and typed arrays.
//
// JSON with marked objects, `{"$": "map", "of": …}`; an object of the data's own that has a member "$" is marked too. Objects come
// back with own members only, so that a member called __proto__ stays a member.
// Does not know: what the data means.
import { utf8ToBytes } from "@noble/hashes/utils.js";

const arrays = {
  Uint8Array,
  Int8Array,
  Uint16Array,
  Int16Array,
  Uint32Array,
  Int32Array,
  Float32Array,
  Float64Array,
};

/** @returns null where the data is not plain (functions, class instances, circles). */
export function writePlain(data: unknown): Uint8Array | null {
  try {
    return utf8ToBytes(JSON.stringify(marked(data, 0)));
  } catch {
    return null;
  }
}

/** @returns undefined where the bytes are not such data. */
export function readPlain(bytes: Uint8Array): unknown {
  try {
    return unmarked(JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes)));
  } catch {
    return undefined;
  }
}

function marked(data: unknown, depth: number): unknown {
  if (depth > 500) throw new TypeError("too deep or a circle");
  const inner = (value: unknown) => marked(value, depth + 1);
  if (data === null || typeof data === "string" || typeof data === "boolean") return data;
  if (typeof data === "number")
    return Number.isFinite(data) && !Object.is(data, -0) ? data : { $: "number", of: Object.is(data, -0) ? "-0" : String(data) };
  if (data === undefined) return { $: "undefined" };
  if (typeof data === "bigint") return { $: "bigint", of: String(data) };
  if (typeof data !== "object") throw new TypeError(`no plain data: ${typeof data}`);
  if (Array.isArray(data)) return Array.from(data, inner);
  if (data instanceof Map) return { $: "map", of: [...data].map(([key, value]) => [inner(key), inner(value)]) };
  if (data instanceof Set) return { $: "set", of: [...data].map(inner) };
  for (const [name, kind] of Object.entries(arrays))
    if (data instanceof kind) return { $: name, of: Array.from(data as Float64Array, inner) };
  const proto: unknown = Object.getPrototypeOf(data);
  if (proto !== null && Object.getPrototypeOf(proto) !== null) throw new TypeError("no plain data: an instance");
  const members = Object.entries(data).map(([key, value]) => [key, inner(value)] as const);
  return members.some(([key]) => key === "$") ? { $: "object", of: members } : Object.fromEntries(members);
}

function unmarked(data: unknown): unknown {
  if (data === null || typeof data !== "object") return data;
  if (Array.isArray(data)) return data.map(unmarked);
  const { $: mark, of } = data as { $?: unknown; of?: unknown };
  if (mark === undefined) return Object.fromEntries(Object.entries(data).map(([key, value]) => [key, unmarked(value)]));
  if (mark === "undefined") return undefined;
  if (mark === "number") return Number(of);
  if (mark === "bigint") return BigInt(of as string);
  const list = of as unknown[];
  if (mark === "map") return new Map((list as [unknown, unknown][]).map(([key, value]) => [unmarked(key), unmarked(value)]));
  if (mark === "set") return new Set(list.map(unmarked));
  if (mark === "object") return Object.fromEntries((list as [string, unknown][]).map(([key, value]) => [key, unmarked(value)]));
  const kind = arrays[mark as keyof typeof arrays];
  if (kind === undefined) throw new TypeError("an unknown mark");
  return kind.from(list.map(unmarked) as number[]);
}
