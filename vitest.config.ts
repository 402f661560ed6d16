// How the tests are run: everything that ends in .test.ts, in Node, with a closing line that a script can read.
//
// `npm test` is a sample with fixed seeds; LONG=1 (npm run test:long) multiplies the numbers (test/sample.ts).
import { defineConfig } from "vitest/config";

export default defineConfig({
  test: {
    include: ["src/**/*.test.ts", "test/**/*.test.ts", "reference/**/*.test.ts"],
    reporters: ["default", "./test/countLine.ts"],
    testTimeout: process.env.LONG ? 3_600_000 : 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
});
