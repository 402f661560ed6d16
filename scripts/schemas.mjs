// node scripts/schemas.mjs: writes the published JSON Schemas anew (scripts/schemas.ts).
import { writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { importTypeScript } from "./bundle.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const { schemaFiles } = await importTypeScript("scripts/schemas.ts");
for (const { path, text } of schemaFiles()) writeFileSync(root + path, text);
