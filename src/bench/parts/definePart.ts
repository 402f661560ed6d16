// Makes a kind of the catalogue from what is particular to it, so that its file tells only that.
//
// Does not know: any kind.
import type { PartKind } from "./partKind.ts";

/** What most kinds do not have. */
type Usually =
  | "role"
  | "markedLeg"
  | "parameters"
  | "states"
  | "figures"
  | "model"
  | "limits"
  | "noticed"
  | "standIns"
  | "cautions"
  | "meterTest";

export function definePart(particular: Omit<PartKind, Usually> & Partial<Pick<PartKind, Usually>>): PartKind {
  return {
    role: "circuit",
    markedLeg: null,
    parameters: {},
    states: {},
    figures: {},
    model: () => [],
    limits: () => [],
    noticed: () => [],
    standIns: [],
    cautions: [],
    meterTest: null,
    ...particular,
  };
}

/** Where practice has no source. */
export const practice = "common practice, no source";
