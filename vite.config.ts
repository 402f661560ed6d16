// The build: one file dist/cli.mjs; only the solver stays in node_modules, because it loads its WebAssembly from beside itself.
//
// The page is a second build (vite.page.config.ts) into the same folder, so neither empties it; scripts/bundle.mjs uses the same settings for benchmarks and recordings.
import { defineConfig } from "vite";

export default defineConfig({
  build: {
    ssr: "src/cli/main.ts",
    outDir: "dist",
    emptyOutDir: false,
    target: "node20",
    minify: false,
    rolldownOptions: { output: { entryFileNames: "cli.mjs", format: "es", codeSplitting: false } },
  },
  ssr: { noExternal: true, external: ["highs"], target: "node" },
});
