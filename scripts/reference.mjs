// npm run reference -- --record SUBJECT …: derives recorded results anew with the real tools (reference/<subject>/record.ts).
//
// Recordings are written only here, never by a failing test.
import { existsSync, readdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { importTypeScript } from "./bundle.mjs";
import { ensureTools } from "./tools.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const subjects = readdirSync(`${root}reference`).filter((s) => existsSync(`${root}reference/${s}/record.ts`));
const wanted = process.argv.slice(2).filter((a) => a !== "--record");
if (!process.argv.includes("--record")) {
  console.log(
    `Recorded subjects: ${subjects.join(", ")}.\nnpm run reference -- --record ${subjects[0] ?? "circuits"}   derives one anew with the real tool.`,
  );
  process.exit(0);
}
for (const subject of wanted.filter((w) => !subjects.includes(w)))
  console.error(`There is no subject ${subject}. There are: ${subjects.join(", ")}.`);
if (wanted.some((w) => !subjects.includes(w))) process.exit(2);
const missing = ensureTools();
if (missing.length > 0) console.error(`Missing here: ${missing.map((t) => t.command).join(", ")}.`);
process.chdir(root);
for (const subject of wanted.length > 0 ? wanted : subjects) {
  console.log(`Recording ${subject} …`);
  await (await importTypeScript(`reference/${subject}/record.ts`)).record();
}
