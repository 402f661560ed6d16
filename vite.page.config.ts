// The page's build: src/app/main.tsx and all that belongs to it as the one file dist/benchday.html (scripts/oneFile.ts).
//
// It runs after the build of the commands, which empties the folder.
import { existsSync } from "node:fs";
import { defineConfig } from "vite";
import { oneFile, pageTarget } from "./scripts/oneFile.ts";

const entry = existsSync("src/app/main.tsx") ? "src/app/main.tsx" : "src/app/engine/standIn.ts";
export default defineConfig({
  plugins: [oneFile("benchday.html")],
  build: {
    outDir: "dist",
    emptyOutDir: false,
    target: pageTarget,
    modulePreload: false,
    cssCodeSplit: false,
    assetsInlineLimit: 1e8,
    copyPublicDir: false,
    reportCompressedSize: false,
    rolldownOptions: {
      input: entry,
      output: { format: "iife", entryFileNames: "page.js", codeSplitting: false },
    },
  },
});
