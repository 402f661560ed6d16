// One save of a class as bytes, and back: a small head and a body, each with its checksum.
//
// A head is one line and a JSON text: `benchday-kept/1 <length> <sum>` says version, length of the JSON, and the SHA-256 of
// version, length and JSON, which is also the head's hash; that first line stays the same in every later version, so that a bit that flips in the version number is told from a
// newer version. The JSON holds counter, clock as said, note, title, length and SHA-256 of the body, and the hash of the parent's
// head. The body is JSON of [text, beside]: JSON keeps even half a surrogate pair exactly, which plain UTF-8 would not.
//
// SHA-256 and not a faster 64-bit sum, because the hash of a head is also its name in the chain of parents: it must tell apart
// what two tabs wrote, not only find torn sectors, and at a class file's size it costs a millisecond or two.
// A key is `<class>/<counter>-<first half of the hash>`: the order of things is the order of names, never the clock.
// Does not know: where bytes are kept, which generations stay.
import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import type { Snapshot } from "./store.ts";

export interface Head {
  readonly counter: number;
  readonly at: string;
  readonly note: string;
  readonly title: string;
  /** Length of the body. */
  readonly bytes: number;
  /** SHA-256 of the body. */
  readonly sum: string;
  /** Hash of the head that this one was made from; null for the first. */
  readonly parent: string | null;
  /** True where it says that the class was taken off this computer; there is no body then. */
  readonly gone?: true;
}

export type ReadHead =
  | { readonly status: "whole"; readonly head: Head; readonly hash: string }
  | { readonly status: "newer" }
  | { readonly status: "damaged" };

export const keptVersion = 1;

/** Folder of a class's heads or bodies. Any id is allowed; what would read as a folder is written as %xx. */
export const folderOf = (what: "heads" | "bodies", id: string): string =>
  `${what}/${id.replace(/[^\w-]/gu, (c) => `%${c.codePointAt(0)!.toString(16)}.`)}/`;

/** Head and body of a save, with their names. */
export function makeGeneration(
  id: string,
  snapshot: Snapshot | null,
  about: Pick<Head, "counter" | "at" | "note" | "title" | "parent">,
): { readonly name: string; readonly hash: string; readonly head: Uint8Array; readonly body: Uint8Array; readonly read: Head } {
  const body = snapshot === null ? new Uint8Array() : utf8ToBytes(JSON.stringify([snapshot.text, snapshot.beside]));
  const gone = snapshot === null ? ({ gone: true } as const) : {};
  const read: Head = { ...about, bytes: body.length, sum: bytesToHex(sha256(body)), ...gone };
  const head = writeHead(keptVersion, utf8ToBytes(JSON.stringify({ ...read, class: id })));
  const hash = latin1(head.subarray(head.indexOf(0x0a) - 64, head.indexOf(0x0a)));
  return { name: nameOf(about.counter, hash), hash, head, body, read };
}

/** The first line and what follows it. */
export function writeHead(version: number, json: Uint8Array): Uint8Array {
  const sum = bytesToHex(sha256(joined(utf8ToBytes(`${version} ${json.length}\n`), json)));
  return joined(utf8ToBytes(`benchday-kept/${version} ${json.length} ${sum}\n`), json);
}

/** Reads a head that stood under `name`: version, then length, then checksum, then whether it belongs where it stood. */
export function readHead(id: string, name: string, bytes: Uint8Array): ReadHead {
  const first = /^benchday-kept\/(\d{1,6}) (\d{1,9}) ([0-9a-f]{64})\n/.exec(latin1(bytes.subarray(0, 120)));
  if (!first) return { status: "damaged" };
  const version = Number(first[1]);
  const json = bytes.subarray(first[0].length);
  if (json.length !== Number(first[2])) return { status: "damaged" };
  if (bytesToHex(sha256(joined(utf8ToBytes(`${version} ${json.length}\n`), json))) !== first[3]) return { status: "damaged" };
  if (version > keptVersion) return { status: "newer" };
  const hash = first[3] as string;
  try {
    const { class: owner, ...head } = JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(json)) as Head & {
      class: string;
    };
    if (owner !== id || nameOf(head.counter, hash) !== name) return { status: "damaged" };
    return { status: "whole", head, hash };
  } catch {
    return { status: "damaged" };
  }
}

/** The snapshot of a body, or null where it is not the one that the head speaks of. */
export function readBody(head: Head, bytes: Uint8Array | null): Snapshot | null {
  if (bytes === null || bytes.length !== head.bytes || bytesToHex(sha256(bytes)) !== head.sum) return null;
  return rawBody(bytes);
}

/** What stands in a body, unchecked, as far as it can be read: for a class of a newer version, handed out as it is. */
export function rawBody(bytes: Uint8Array): Snapshot {
  const text = new TextDecoder().decode(bytes);
  try {
    const read: unknown = JSON.parse(text);
    if (Array.isArray(read) && typeof read[0] === "string")
      return { text: read[0], beside: typeof read[1] === "string" ? read[1] : "" };
  } catch {
    // Not ours: handed out as it stands.
  }
  return { text, beside: "" };
}

/** The counter that a name carries, also where the head itself cannot be read; -1 where the name is not one of ours. */
export function counterOf(name: string): number {
  const found = /^(\d{12})-[0-9a-f]{32}$/.exec(name);
  return found ? Number(found[1]) : -1;
}

function nameOf(counter: number, hash: string): string {
  return `${String(counter).padStart(12, "0")}-${hash.slice(0, 32)}`;
}

function joined(a: Uint8Array, b: Uint8Array): Uint8Array {
  const both = new Uint8Array(a.length + b.length);
  both.set(a);
  both.set(b, a.length);
  return both;
}

function latin1(bytes: Uint8Array): string {
  return String.fromCharCode(...bytes);
}
