// Runs a TypeScript program of ours under plain Node: bundles it into .cache and imports the result.
//
// Node 20 does not read TypeScript; the build tool that we have anyway does.
import { mkdirSync } from "node:fs";
import { basename } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { build } from "vite";

const root = fileURLToPath(new URL("..", import.meta.url));

/** @param file path from the project's root. @returns the module's exports. */
export async function importTypeScript(file) {
  const name = `${file.replace(/[\\/]/g, "-").replace(/\.ts$/, "")}.mjs`;
  const outDir = `${root}.cache/bundled/${basename(name, ".mjs")}`;
  mkdirSync(outDir, { recursive: true });
  await build({
    configFile: false,
    root,
    logLevel: "error",
    build: {
      ssr: root + file,
      outDir,
      emptyOutDir: true,
      target: "node20",
      minify: false,
      rolldownOptions: {
        external: ["highs", "vite", "vitest"],
        output: { entryFileNames: name, format: "es", codeSplitting: false },
      },
    },
  });
  return import(`${pathToFileURL(`${outDir}/${name}`).href}?${Date.now()}`);
}
