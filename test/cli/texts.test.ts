// Every text that a command names is in the catalogue; the compiler cannot see keys that are put together.
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import en from "../../locales/en.json" with { type: "json" };
import { root } from "./benchday.ts";

const families = new Map<string, Set<string>>();
for (const room of Object.values(en))
  for (const [family, texts] of Object.entries(room))
    if (typeof texts === "object") families.set(family, new Set(Object.keys(texts)));

/** Words that a file puts before the keys it says. */
const prefixes: Record<string, string> = {
  "main.ts": "help",
  "plan.ts": "plan",
  "order.ts": "ordering",
  "rehearse.ts": "rehearsing",
  "run.ts": "run",
};

function sources(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((e) =>
    e.isDirectory() ? sources(join(folder, e.name)) : [join(folder, e.name)],
  );
}
const found: [file: string, key: string][] = sources(join(root, "src/cli")).flatMap((path) => {
  const text = readFileSync(path, "utf8");
  const file = path.split("/").at(-1) as string;
  const whole = [...text.matchAll(/"([a-zA-Z]+)\.([\w-]+)"/g)]
    .filter((m) => families.has(m[1] as string) && m[2] !== "pdf")
    .map((m) => `${m[1]}.${m[2]}`);
  const prefix = prefixes[file];
  const short =
    prefix === undefined ? [] : [...text.matchAll(/\b(?:t|say|section)\(\s*"(\w+)"/g)].map((m) => `${prefix}.${m[1]}`);
  return [...whole, ...short].map((key): [string, string] => [file, key]);
});

test("the search finds keys", () => expect(found.length).toBeGreaterThan(60));
for (const [file, key] of found)
  test(`${file} says ${key}`, () => {
    const [family = "", code = ""] = key.split(".");
    expect(families.get(family)?.has(code)).toBe(true);
  });
