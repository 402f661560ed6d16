// The plan of the demo class: reading, rehearsing every lesson with the class's parts and supplies, teams, stock, verdicts.
//
// Nobody plans by computer otherwise, so there is nothing to divide by; the goal is that a teacher does not wait.
import { type Day, finish } from "../src/base/index.ts";
import { loadSchool } from "../src/cli/loadFiles.ts";
import { nodeWorld } from "../src/cli/nodeWorld.ts";
import { planClass } from "../src/school/readiness/index.ts";

export async function run() {
  const time = (work: () => void) => {
    const start = performance.now();
    work();
    return performance.now() - start;
  };
  const plan = (world: ReturnType<typeof nodeWorld>) => {
    const school = loadSchool("demo/harbour.json").value;
    if (school === null) throw new Error("the demo does not read");
    return finish(planClass({ ...school, seed: 1 }, world));
  };
  const cold = time(() => void plan(nodeWorld("2026-12-01" as Day, 1)));
  const runs = Array.from({ length: 5 }, () => time(() => void plan(nodeWorld("2026-12-01" as Day, 1)))).sort((a, b) => a - b);
  const world = nodeWorld("2026-12-01" as Day, 1);
  plan(world);
  const remembered = Array.from({ length: 5 }, () => time(() => void plan(world))).sort((a, b) => a - b);
  const row = (name: string, ms: number, goal: number) => ({
    name,
    ours: `${ms.toFixed(0)} ms`,
    reference: "–",
    ratio: null,
    goal: `≤ ${goal} ms`,
    met: ms <= goal,
  });
  return [
    row("plan of the demo class, first in a process", cold, 4000),
    row("the same, warm, median of 5", runs[2]!, 2000),
    row("the same, rehearsals remembered, median of 5", remembered[2]!, 500),
  ];
}
