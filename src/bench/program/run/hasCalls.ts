// Whether a piece of the tree calls anything: a function, the library.
//
// The compiler keeps what it can in registers as long as nothing is called; the estimate of cycles asks for that.
// Does not know: what is called.
import type { Expression, Statement } from "../check/tree.ts";

/** The fields of nodes that hold nodes. Types and variables are no nodes, and may lead round in circles. */
const inner =
  "left right value values place array record index pointer text test yes no first second list body step effect count".split(" ");

export function hasCalls(node: Statement | Expression): boolean {
  const { op } = node as { op?: string };
  if (op === "call" || op === "library" || op === "changeText") return true;
  const fields = node as unknown as Record<string, unknown>;
  return inner.some((name) => {
    const field = fields[name];
    if (Array.isArray(field)) return field.some((one) => typeof one === "object" && one !== null && hasCalls(one as Statement));
    return typeof field === "object" && field !== null && hasCalls(field as Statement);
  });
}
