// Reads what the up-loader wrote when a program did not get onto the board.
//
// A failed up-load writes many lines, and later ones follow from the first cause: a port that cannot be opened also "does not
// respond". So the kinds are looked for in the order in which things happen, not in the order of the lines. Both generations of the
// up-loader's words are known: avrdude 8 (source: stk500.c, ser_posix.c, ser_win32.c, main.c, update.c, fileio.c of avrdude 8.2) and
// 6 (from memory).
// Does not know: programs, the compiler.
import { type SetupCause, type SetupMessage, setupCauses } from "./setupCauses.ts";

export interface SetupExplanation {
  /** null if nothing in the text is known. */
  readonly message: SetupMessage | null;
  /** The port that the text names, such as COM3 or /dev/ttyUSB0. */
  readonly port: string | null;
  /** The line of the text that was recognised. */
  readonly found: string | null;
  /** The likeliest first. */
  readonly causes: readonly SetupCause[];
}

/** In the order in which an up-load goes. A port's own words come with the reason that the computer gives. */
const patterns: readonly (readonly [message: SetupMessage, pattern: RegExp])[] = [
  [
    "too-large",
    /out of range \[|intel hex record .*out of range|address .*out of range|(?:text section|program|size).*exceeds.*(?:space|flash|memory)|region [`'"]?text['"]? overflowed/i,
  ],
  ["port-denied", /(?:open|port|device|tty|COM).*permission denied/i],
  ["port-busy", /(?:open|port|device|tty|COM\d).*(?:resource busy|access is denied)|port .*(?:already in use|busy)/i],
  [
    "port-not-found",
    /(?:open|port|device|tty|COM).*(?:no such file|cannot find the file|no such device|not found)|unable to open port|can't open device|cannot open port/i,
  ],
  ["clock-too-fast", /clock is too fast|rc ?= ?-2/i],
  ["wrong-signature", /expected signature for|double check chip or use -F/i],
  ["no-signature", /invalid device signature|yikes!|signature = 0x(?:000000|ffffff|00 ?00 ?00|ff ?ff ?ff)/i],
  ["not-verified", /verification (?:error|mismatch)|verify error|first mismatch/i],
  ["not-in-sync", /not in sync|getsync/i],
  ["noise", /cannot communicate with device|protocol error|bad response/i],
  ["no-answer", /programmer is not responding|timeout communicating|not responding/i],
  ["start-failed", /initiali[sz]ation failed|rc ?= ?-1|double check (?:the )?connections/i],
  ["no-port", /no (?:serial )?ports?\b|port is (?:missing|not selected)|no (?:device|board) (?:found|detected)/i],
];

/** How each message begins on the screen of a class, so that it can be chosen from a list; null where nothing is written. */
export const setupWords: Readonly<Record<SetupMessage, string | null>> = {
  "no-port": null,
  "port-not-found": 'can\'t open device "COM3": The system cannot find the file specified.',
  "port-denied": 'can\'t open device "/dev/ttyUSB0": Permission denied',
  "port-busy": 'can\'t open device "COM3": Access is denied.',
  "not-in-sync": "stk500_getsync(): not in sync: resp=0x00",
  "no-answer": "stk500_recv(): programmer is not responding",
  noise: "stk500_cmd(): protocol error",
  "wrong-signature": "Expected signature for ATmega328P is 1E 95 0F",
  "no-signature": "Yikes!  Invalid device signature.",
  "start-failed": "initialization failed, rc=-1",
  "clock-too-fast": "initialization failed, rc=-2",
  "not-verified": "verification error, first mismatch at byte 0x0000",
  "too-large": "address 0x8010 out of range at line 2049",
};

/** @param text what the up-loader wrote, one line or all of it. Never throws. */
export function explainSetupMessage(text: string): SetupExplanation {
  // Longer text is no message, and every pattern would walk through it.
  const lines = text
    .slice(0, 100_000)
    .split(/\r\n|\r|\n/)
    .map((line) => line.slice(0, 500));
  const port = /(\/dev\/(?:tty|cu)[\w.-]+|\bCOM\d{1,3}\b)/.exec(text.slice(0, 100_000))?.[1] ?? null;
  for (const [message, pattern] of patterns) {
    const found = lines.find((line) => pattern.test(line));
    if (found !== undefined) return { message, port, found: found.trim(), causes: setupCauses(message) };
  }
  return { message: null, port, found: null, causes: [] };
}
