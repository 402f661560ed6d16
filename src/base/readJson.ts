// A JSON document, such as a class file, read into plain data with the place of every piece.
//
// Does not know: what the data mean, YAML.
import { type Document, type DocumentLimits, type DocumentProblem, documentLimits, readTree } from "./document.ts";
import type { Reading } from "./problem.ts";
import { readJsonTree } from "./readJsonTree.ts";

/** As `readTree` says. */
export function readJson(
  file: string,
  text: string,
  limits: DocumentLimits = documentLimits.json,
): Reading<Document, DocumentProblem> {
  return readTree(file, text, readJsonTree, limits);
}
