// The published JSON Schemas are those of the code, and say of a file what reading says of its shape.
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { schemaFiles } from "../../scripts/schemas.ts";

const root = new URL("../../", import.meta.url);

for (const { path, text } of schemaFiles())
  test(`${path} is up to date (node scripts/schemas.mjs)`, () => expect(readFileSync(new URL(path, root), "utf8")).toBe(text));

interface Node {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly items?: Node;
  readonly required?: readonly string[];
  readonly description?: string;
  readonly additionalProperties?: boolean;
}

test("the schema of class files demands what a smallest class file has, and explains every field", () => {
  const schema = JSON.parse(readFileSync(new URL("schemas/class.schema.json", root), "utf8")) as Node;
  expect(schema.required).toEqual(["format", "currency", "classes"]);
  expect(schema.additionalProperties).toBe(false);
  expect(Object.entries(schema.properties ?? {}).filter(([, field]) => !field.description)).toEqual([]);
});

test("every field of the demo is in the schema", () => {
  const schema = JSON.parse(readFileSync(new URL("schemas/class.schema.json", root), "utf8")) as Node;
  const unknown: string[] = [];
  const walk = (data: unknown, node: Node | undefined, path: string) => {
    if (Array.isArray(data)) for (const entry of data) walk(entry, node?.items, `${path}[]`);
    else if (typeof data === "object" && data !== null && node?.properties)
      for (const [name, inside] of Object.entries(data)) {
        if (!(name in node.properties)) unknown.push(`${path}.${name}`);
        walk(inside, node.properties[name], `${path}.${name}`);
      }
  };
  walk(JSON.parse(readFileSync(new URL("demo/harbour.json", root), "utf8")), schema, "");
  expect(unknown).toEqual([]);
});
