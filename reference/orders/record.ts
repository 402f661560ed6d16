// Gives every model to the real glpsol and cbc and keeps what they printed. Run by `npm run reference -- --record orders`.
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { lpText } from "../../src/school/order/index.ts";
import { recordingDate, sha256, toolVersion } from "../tools.ts";
import { models } from "./models.ts";

export const tools = ["glpsol", "cbc"] as const;
export type Tool = (typeof tools)[number];

export interface Recording {
  readonly tool: string;
  readonly version: string;
  readonly command: string;
  readonly date: string;
  readonly models: Record<string, { readonly input: string; readonly output: string; readonly printed: string }>;
}

/** Seconds for one model; the recorded ones need far less. */
const limit = 120;

/** @returns what the tool prints about the outcome of one model, without times and paths. */
export function runSolver(tool: Tool, lp: string): string {
  const folder = mkdtempSync(`${tmpdir()}/order-`);
  const [input, output] = [`${folder}/model.lp`, `${folder}/solution.txt`];
  try {
    writeFileSync(input, lp);
    if (tool === "glpsol") {
      spawnSync("glpsol", ["--lp", input, "--cuts", "--tmlim", String(limit), "-o", output]);
      return lines(readFileSync(output, "utf8"), /^(Status|Objective):/);
    }
    const { stdout } = spawnSync("cbc", [input, "sec", String(limit), "ratio", "0", "solve", "quit"], { encoding: "utf8" });
    return lines(stdout, /^(Result - |Objective value:)/);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

function lines(text: string, wanted: RegExp): string {
  return text
    .split("\n")
    .filter((line) => wanted.test(line))
    .map((line) => line.replace(/\s+/g, " ").trim())
    .join("\n");
}

/** @returns the cost that a tool proved to be the least, or null where it proved none. */
export function provenCost(tool: Tool, printed: string): number | null {
  const proven = tool === "glpsol" ? /INTEGER OPTIMAL/.test(printed) : /Result - Optimal solution found/.test(printed);
  const cost = /Objective(?:: cost =| value:) (-?[\d.e+]+)/.exec(printed)?.[1];
  return proven && cost !== undefined ? Number(cost) : null;
}

/** Writes glpsol.json and cbc.json from the project's root. */
export async function record(): Promise<void> {
  for (const tool of tools) {
    const recorded: Recording["models"] = {};
    for (const { name, model } of models) {
      const lp = lpText(model);
      const printed = runSolver(tool, lp);
      if (printed === "") throw new Error(`${tool} printed nothing for ${name}`);
      recorded[name] = { input: sha256(lp), output: sha256(printed), printed };
    }
    const recording: Recording = {
      tool,
      version: toolVersion(tool, tool === "cbc" ? "quit" : "--version"),
      command: tool === "glpsol" ? "glpsol --lp MODEL --cuts -o SOLUTION" : "cbc MODEL ratio 0 solve quit",
      date: recordingDate,
      models: recorded,
    };
    writeFileSync(`reference/orders/${tool}.json`, `${JSON.stringify(recording, null, 2)}\n`);
  }
}
