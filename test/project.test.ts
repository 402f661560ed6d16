// Promises of the project as a whole that a person could break without noticing.
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";

const root = new URL("..", import.meta.url).pathname;
const read = (path: string) => readFileSync(join(root, path), "utf8");

test("the lock file holds no addresses of a registry", () => expect(read("package-lock.json")).not.toMatch(/"resolved":/));
test("all packages are pinned exactly", () => {
  const { dependencies, devDependencies } = JSON.parse(read("package.json")) as Record<string, Record<string, string>>;
  for (const [name, version] of Object.entries({ ...dependencies, ...devDependencies }))
    expect(version, name).toMatch(/^\d+\.\d+\.\d+/);
});
test("the readme opens with the job and then the two commands", () => {
  const text = read("README.md");
  expect(text.indexOf("npm start")).toBeGreaterThan(text.indexOf("Benchday is for the person"));
  expect(text.indexOf("npm start")).toBeLessThan(text.indexOf("npm test"));
});
test("the continuous check calls the two commands", () => {
  expect(read(".ci/run")).toMatch(/^npm test$/m);
  expect(read(".ci/run")).toMatch(/^npm start/m);
});
test("every link in the pages for people leads to a file that is there", () => {
  for (const page of ["README.md", "ARCHITECTURE.md", "CONTRIBUTING.md", "CHANGELOG.md"]) {
    for (const [, target] of read(page).matchAll(/\]\((?!https?:)([^)#]+)/g))
      expect(statSync(join(root, target as string)).size, `${page}: ${target}`).toBeGreaterThan(0);
  }
});
test("no program or lesson of ours has another ending than .cpp", () => {
  const walk = (folder: string): string[] =>
    readdirSync(join(root, folder), { withFileTypes: true }).flatMap((e) =>
      e.isDirectory() ? walk(`${folder}/${e.name}`) : [`${folder}/${e.name}`],
    );
  for (const path of walk("lessons")) expect(path).toMatch(/\.(yaml|cpp|md|svg|png|json|vtt)$/);
});
