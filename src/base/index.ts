// base: what every room may use. Imports nothing of ours.
export { binomial, binomialQuantile, logChanceEnough, poisson, poissonQuantile } from "./binomial.ts";
export { checkShape } from "./checkShape.ts";
export { type BandColour, type BandOutcome, bandColours, colourBands, readBands } from "./colourCode.ts";
export { contentHash } from "./contentHash.ts";
export { addDays, type Day, dayNumber, daysBetween, parseDay, weekday } from "./day.ts";
export {
  type Document,
  type DocumentLimits,
  type DocumentProblem,
  documentLimits,
  type Notation,
  type Path,
  plainText,
  type RefusedFeature,
} from "./document.ts";
export type { IntegerModel, IntegerOptions, IntegerOutcome, IntegerVariable, LinearRow } from "./integerProgram.ts";
export { currencyDecimals, type Money, parseMoney, writeMoney } from "./money.ts";
export { near } from "./near.ts";
export { isPreferred, nearestPreferred, preferredDigits, preferredValues, type Series } from "./preferredValues.ts";
export {
  type AnyProblem,
  type Datum,
  hasErrors,
  type Place,
  type ProblemBase,
  type Reading,
  type Severity,
  sortProblems,
} from "./problem.ts";
export { formatQuantity, parseQuantity, type QuantityOutcome, shortValue, type Unit } from "./quantity.ts";
export { type Random, seededRandom } from "./random.ts";
export { readJson } from "./readJson.ts";
export { readYaml } from "./readYaml.ts";
export { finish, type LongWork, type Progress, rememberSlices, type World } from "./world.ts";
