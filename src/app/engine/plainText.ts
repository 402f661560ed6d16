// Plain data as text and back: JSON, and in it the maps and sets that lessons, kits and class files hold.
//
// Does not know: what the data mean.

const mark = "$";

/** @param data plain data with Maps and Sets in it; nothing of it has a member named "$". */
export function toPlainText(data: unknown): string {
  return JSON.stringify(data, (_, value) => {
    if (value instanceof Map) return { [mark]: "map", of: [...value] };
    if (value instanceof Set) return { [mark]: "set", of: [...value] };
    return value;
  });
}

/** @param text as `toPlainText` wrote it. */
export function fromPlainText(text: string): unknown {
  return JSON.parse(text, (_, value) => {
    if (value?.[mark] === "map") return new Map(value.of);
    if (value?.[mark] === "set") return new Set(value.of);
    return value;
  });
}
