// A YAML document, such as a lesson or a kit, read into plain data with the place of every piece.
//
// Does not know: what the data mean, JSON.
import { type Document, type DocumentLimits, type DocumentProblem, documentLimits, readTree } from "./document.ts";
import type { Reading } from "./problem.ts";
import { readYamlTree } from "./readYamlTree.ts";

/** As `readTree` says. */
export function readYaml(
  file: string,
  text: string,
  limits: DocumentLimits = documentLimits.yaml,
): Reading<Document, DocumentProblem> {
  return readTree(file, text, readYamlTree, limits);
}
