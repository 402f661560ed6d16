// Sums written for a field, read back the same.
import { expect, test } from "vitest";
import { readSum } from "./readSum.ts";
import { writtenSum } from "./writtenSum.ts";

for (const decimals of [0, 2, 3])
  for (const decimalMark of [".", ","])
    test(`what stands in a field is read back, ${decimals} decimals, mark ${decimalMark}`, () => {
      for (const sum of [0, 1, 99, 100, 1000, 1234, 100000, 1234567, 999999999])
        expect(readSum(writtenSum({ decimalMark }, sum, decimals), decimals)).toBe(sum);
    });
