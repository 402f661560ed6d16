// npm run benchmarks [NAME …]: speed as ratios against what a user would use instead, in one run on one machine.
//
// Each benchmarks/<name>.bench.ts exports run(): rows {name, ours, reference, ratio, goal, met}. The table is also kept in
// benchmarks/RESULTS.md with its date, so that a claim in the docs can cite it.
import { spawnSync } from "node:child_process";
import { readdirSync, writeFileSync } from "node:fs";
import { cpus } from "node:os";
import { fileURLToPath } from "node:url";
import { importTypeScript } from "./bundle.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const wanted = process.argv.slice(2).filter((a) => !a.startsWith("--"));
const names = readdirSync(`${root}benchmarks`)
  .filter((f) => f.endsWith(".bench.ts"))
  .map((f) => f.replace(".bench.ts", ""))
  .filter((n) => wanted.length === 0 || wanted.includes(n));
process.chdir(root);
const commit = spawnSync("git", ["rev-parse", "--short", "HEAD"], { cwd: root, encoding: "utf8" }).stdout.trim();
const out = [
  "# What was measured",
  "",
  `\`npm run benchmarks\` on ${new Date().toISOString().slice(0, 10)}, on top of commit ${commit}, Node ${process.versions.node}, ${cpus().length} processors. Trust the ratios of one run, not its seconds.`,
];
for (const name of names) {
  console.log(`${name} …`);
  const rows = await (await importTypeScript(`benchmarks/${name}.bench.ts`)).run();
  out.push(
    "",
    `## ${name}`,
    "",
    "| what | ours | instead | ours ÷ instead | goal | met |",
    "| --- | --- | --- | --- | --- | --- |",
  );
  for (const r of rows) {
    const line = `| ${r.name} | ${r.ours} | ${r.reference} | ${typeof r.ratio === "number" ? Number(r.ratio.toPrecision(3)) : "–"} | ${r.goal} | ${r.met === null ? "–" : r.met ? "yes" : "no"} |`;
    out.push(line);
    console.log(line);
  }
}
if (wanted.length === 0) writeFileSync(`${root}benchmarks/RESULTS.md`, `${out.join("\n")}\n`);
