// What the up-loader can say, and what in class is usually behind it.
//
// The order is how often each is met in class, the likeliest first, and among equals what is checked fastest (from memory; no
// count of such messages was found). A school drawer of mixed USB cables holds 10 to 30 % that only charge (from memory).
// Does not know: the up-loader's words (explainSetupMessage.ts), any language's.

export type SetupCause =
  | "unplugged"
  | "charge-only-cable"
  | "wrong-port"
  | "driver-missing"
  | "not-allowed"
  | "port-in-use"
  | "wrong-board"
  | "parts-on-0-and-1"
  | "no-reset"
  | "held-in-reset"
  | "no-boot-loader"
  | "weak-supply"
  | "hub"
  | "loose-programming-cable"
  | "chip-turned"
  | "other-chip"
  | "slow-clock"
  | "worn-chip"
  | "program-too-long"
  | "board-broken";

const causes = {
  "no-port": ["unplugged", "charge-only-cable", "driver-missing", "hub", "board-broken"],
  "port-not-found": ["unplugged", "wrong-port", "charge-only-cable", "driver-missing", "hub", "board-broken"],
  "port-denied": ["not-allowed", "port-in-use"],
  "port-busy": ["port-in-use", "wrong-port"],
  "not-in-sync": ["wrong-board", "wrong-port", "parts-on-0-and-1", "held-in-reset", "no-reset", "no-boot-loader", "board-broken"],
  "no-answer": ["wrong-board", "wrong-port", "held-in-reset", "parts-on-0-and-1", "no-reset", "no-boot-loader", "board-broken"],
  noise: ["wrong-board", "parts-on-0-and-1", "hub", "weak-supply", "board-broken"],
  "wrong-signature": ["wrong-board", "other-chip"],
  "no-signature": ["loose-programming-cable", "chip-turned", "wrong-board", "board-broken"],
  "start-failed": ["loose-programming-cable", "unplugged", "weak-supply", "board-broken"],
  "clock-too-fast": ["slow-clock", "other-chip"],
  "not-verified": ["weak-supply", "hub", "wrong-board", "worn-chip"],
  "too-large": ["program-too-long", "wrong-board"],
} as const satisfies Readonly<Record<string, readonly SetupCause[]>>;

/** Kinds of message; "no-port" is none: the list of ports is empty, or the board is not in it. */
export type SetupMessage = keyof typeof causes;

export const setupMessages = Object.keys(causes) as readonly SetupMessage[];

/** @returns what may be behind the message, the likeliest first. */
export function setupCauses(message: SetupMessage): readonly SetupCause[] {
  return causes[message];
}
