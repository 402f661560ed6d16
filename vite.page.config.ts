// The page's build: src/app/main.tsx and all that belongs to it as the one file dist/benchday.html (scripts/oneFile.ts).
//
// Does not know: the commands, whose build writes into the same folder.
import { defineConfig } from "vite";
import { pageBuild } from "./scripts/oneFile.ts";

export default defineConfig(pageBuild());
