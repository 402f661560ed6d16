// The closing line of a test run: "N passed, N failed", alone on the last line.
//
// The default reporter prints its own summary at the end, so ours is written as the process leaves.
import type { Reporter, SerializedError, TestModule } from "vitest/node";

export default class CountLine implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>, unhandled: ReadonlyArray<SerializedError>): void {
    let passed = 0;
    // Lint, types and build are run before the tests (scripts/test.mjs) and count as one each.
    let failed = unhandled.length + (process.env.FAULTS_BEFORE ?? "").split(";").filter(Boolean).length;
    let skipped = 0;
    for (const module of modules) {
      let seen = 0;
      for (const test of module.children.allTests()) {
        seen += 1;
        const state = test.result().state;
        if (state === "passed") passed += 1;
        else if (state === "failed") failed += 1;
        else skipped += 1;
      }
      // A file that fails to load has no tests, and would otherwise count as nothing wrong.
      if (seen === 0 || module.errors().length > 0) failed += 1;
    }
    const extra = skipped > 0 ? `, ${skipped} skipped` : "";
    process.once("exit", () => process.stdout.write(`\n${passed} passed, ${failed} failed${extra}\n`));
  }
}
